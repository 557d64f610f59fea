using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Statistics.Bounds;

/// <summary>A least specificity that follows from the positivity alone (see <see cref="SpecificityProof"/>).</summary>
public sealed record ProvenSpecificity
{
    internal ProvenSpecificity(long positives, long validTests, double confidence, double designEffect, double? positivityUpper)
    {
        Positives = positives;
        ValidTests = validTests;
        Confidence = confidence;
        DesignEffect = designEffect;
        PositivityUpper = positivityUpper;
    }

    /// <summary>Positive valid tests.</summary>
    public long Positives { get; }

    /// <summary>Valid tests: positive and negative.</summary>
    public long ValidTests { get; }

    /// <summary>The confidence of the limits, in (0, 1), one-sided.</summary>
    public double Confidence { get; }

    /// <summary>The design effect by which the counts were divided for the limit.</summary>
    public double DesignEffect { get; }

    /// <summary>Positive of valid tests; null without valid tests.</summary>
    public double? Positivity => ValidTests == 0 ? null : (double)Positives / ValidTests;

    /// <summary>The positivity's upper limit, so the most false positives per uninfected person tested; null without valid tests.</summary>
    public double? PositivityUpper { get; }

    /// <summary>In these tests the average specificity is at least this: 1 - positivity; null without valid tests.</summary>
    public double? Specificity => ValidTests == 0 ? null : (double)(ValidTests - Positives) / ValidTests;

    /// <summary>With the confidence stated, the average specificity is at least this; null without valid tests.</summary>
    public double? SpecificityLower => 1 - PositivityUpper;

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason => ValidTests == 0 ? UndefinedReason.NoTrials : null;

    /// <summary>Whether a claimed specificity is too low to be true of these tests on average.</summary>
    /// <param name="specificity">The claim, in [0, 1].</param>
    /// <returns>True where the claim lies below <see cref="SpecificityLower"/>; false also without valid tests.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The claim is outside [0, 1].</exception>
    public bool Refutes(double specificity)
    {
        Guard.Probability(specificity);
        return specificity < SpecificityLower;
    }
}
