namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>The least and the greatest predictive value that the runs without a conclusion leave possible.</summary>
/// <param name="Confirmed">Confirmed runs.</param>
/// <param name="Refuted">Refuted runs.</param>
/// <param name="WithoutConclusion">Runs that are unresolved, pending or unverified (or that the policy does not follow up).</param>
public sealed record PredictiveValueBounds(long Confirmed, long Refuted, long WithoutConclusion)
{
    /// <summary>All positive runs.</summary>
    public long Positives => Confirmed + Refuted + WithoutConclusion;

    /// <summary>The predictive value if every run without a conclusion were refuted; null without positive runs.</summary>
    public double? Lower => Positives == 0 ? null : (double)Confirmed / Positives;

    /// <summary>The predictive value if every run without a conclusion were confirmed; null without positive runs.</summary>
    public double? Upper => Positives == 0 ? null : (double)(Confirmed + WithoutConclusion) / Positives;

    /// <summary>Why there are no bounds; null where there are.</summary>
    public string? LowerUndefined => Positives == 0 ? "there are no positive runs" : null;
}
