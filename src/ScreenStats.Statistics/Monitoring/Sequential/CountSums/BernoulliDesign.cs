using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>
/// What a Bernoulli cumulative sum compares: the rate that is in order with the rate to be found, on a lattice. An event adds 1 - γ, any other
/// observation -γ.
/// </summary>
public sealed record BernoulliDesign
{
    internal BernoulliDesign(double inOrder, double toFind, long numerator, long denominator)
    {
        RateInOrder = inOrder;
        RateToFind = toFind;
        Numerator = numerator;
        Denominator = denominator;
        AdjustedRateToFind = RateOfReference(inOrder, (double)numerator / denominator);
        var odds = Math.Log(AdjustedRateToFind / inOrder);
        NonEventWeight = Precise.LogOnePlus((inOrder - AdjustedRateToFind) / (1 - inOrder));
        EventWeight = odds;
    }

    /// <summary>The rate that is in order, p0.</summary>
    public double RateInOrder { get; }

    /// <summary>The rate to be found, p1, as asked.</summary>
    public double RateToFind { get; }

    /// <summary>The rate for which the sum is best, moved from <see cref="RateToFind"/> so that γ lies on the lattice.</summary>
    public double AdjustedRateToFind { get; }

    /// <summary>The numerator of γ; 1 unless both rates are high.</summary>
    public long Numerator { get; }

    /// <summary>The denominator of γ: the number of steps of the lattice to 1.</summary>
    public long Denominator { get; }

    /// <summary>The reference value γ.</summary>
    public double Reference => (double)Numerator / Denominator;

    /// <summary>The log-likelihood ratio of an event at the adjusted rate, ln(p1 / p0).</summary>
    public double EventWeight { get; }

    /// <summary>The log-likelihood ratio of an observation without event at the adjusted rate, ln((1 - p1) / (1 - p0)); below 0.</summary>
    public double NonEventWeight { get; }

    /// <summary>How much log-likelihood ratio one unit of the sum stands for, r2 = ln(p1 (1 - p0) / (p0 (1 - p1))).</summary>
    public double WeightOfOne => EventWeight - NonEventWeight;

    /// <summary>γ of two rates: -ln((1 - p1) / (1 - p0)) / ln(p1 (1 - p0) / (p0 (1 - p1))).</summary>
    internal static double ReferenceOf(double inOrder, double toFind)
    {
        var down = -Precise.LogOnePlus((inOrder - toFind) / (1 - inOrder));
        return down / (Math.Log(toFind / inOrder) + down);
    }

    /// <summary>The rate p1 with a given γ in (p0, 1), which rises with p1; solved for the log odds.</summary>
    private static double RateOfReference(double inOrder, double reference)
    {
        var low = LogitScale.Logit(inOrder);
        var start = low + 1e-9;
        var end = low + 1;
        while (ReferenceOf(inOrder, LogitScale.Fraction(end)) < reference && end < 700) end += Math.Max(1, end - low);
        return LogitScale.Fraction(Root.Between(logit => ReferenceOf(inOrder, LogitScale.Fraction(logit)) - reference, start, end));
    }
}
