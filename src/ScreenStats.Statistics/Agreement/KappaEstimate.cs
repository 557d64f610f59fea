namespace ScreenStats.Statistics.Agreement;

/// <summary>A kappa with what it was computed from, or undefined with the reason.</summary>
public sealed record KappaEstimate
{
    internal KappaEstimate(AgreementTable table, KappaWeights weights, double? observed, double? chance, Estimate estimate, double? standardError, double? underChance)
    {
        Table = table;
        Weights = weights;
        ObservedAgreement = observed;
        ChanceAgreement = chance;
        Estimate = estimate;
        StandardError = standardError;
        StandardErrorUnderChance = underChance;
    }

    /// <summary>The counts.</summary>
    public AgreementTable Table { get; }

    /// <summary>How much a disagreement counts.</summary>
    public KappaWeights Weights { get; }

    /// <summary>The observed (weighted) agreement, in [0, 1]; null without pairs.</summary>
    public double? ObservedAgreement { get; }

    /// <summary>The (weighted) agreement that the margins alone would give, in [0, 1]; null without pairs.</summary>
    public double? ChanceAgreement { get; }

    /// <summary>Kappa with its limits, clipped to [-1, 1].</summary>
    public Estimate Estimate { get; }

    /// <summary>The asymptotic standard error of kappa; null where undefined.</summary>
    public double? StandardError { get; }

    /// <summary>The standard error that kappa would have if the readings agreed by chance only, for a test of that; null where undefined.</summary>
    public double? StandardErrorUnderChance { get; }
}
