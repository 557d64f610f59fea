using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Bounds;

/// <summary>What the share of positive screens alone proves about the specificity, without any confirmatory test.</summary>
public static class SpecificityProof
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "one-minus-positivity";

    /// <summary>The least average specificity that fits the positivity.</summary>
    /// <param name="positives">Positive valid tests.</param>
    /// <param name="validTests">Valid tests: positive and negative.</param>
    /// <param name="confidence">Confidence in (0, 1), one-sided.</param>
    /// <param name="designEffect">The design effect of the positives, 1 or more: counts are divided by it for the limit.</param>
    /// <returns>The bound with its one-sided limit; undefined without valid tests.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// Positivity is prevalence × Se + (1 - prevalence)(1 - Sp). Where Se is at least 1 - Sp, as for any test no worse than chance, that is at least 1 - Sp:
    /// so Sp is at least 1 - positivity, whatever the prevalence. The limit puts the exact one-sided upper limit of the positivity in its place
    /// (Clopper CJ, Pearson ES, Biometrika 1934;26:404-413; on counts divided by the design effect as in Korn EL, Graubard BI, Surv Methodol
    /// 1998;24:193-201, without their quantile of Student's). It concerns the average over the program's kits and sites.
    /// </remarks>
    public static ProvenSpecificity FromPositivity(long positives, long validTests, double confidence = 0.95, double designEffect = 1)
    {
        Guard.Counts(positives, validTests);
        Guard.Confidence(confidence);
        Guard.DesignEffect(designEffect);
        if (validTests == 0) return new ProvenSpecificity(positives, validTests, confidence, designEffect, null);
        var x = positives / designEffect;
        var n = validTests / designEffect;
        var tail = 1 - confidence;
        var upper = positives == validTests ? 1
            : positives == 0 ? -Precise.ExponentialMinusOne(Math.Log(tail) / n)
            : LogitScale.Fraction(TailEquation.BetaQuantileLogit(x + 1, n - x, tail, upperTail: true));
        return new ProvenSpecificity(positives, validTests, confidence, designEffect, Math.Max(upper, (double)positives / validTests));
    }
}
