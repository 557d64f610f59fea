using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>Intervals of a proportion of clustered trials, by its variance between clusters.</summary>
public static class ClusteredInterval
{
    /// <summary>Wald's interval with Student's quantile on the number of clusters minus 1, clipped to [0, 1].</summary>
    /// <param name="sums">Sums over the clusters.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Sums that contradict each other, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// p ± t sqrt(v), v the ratio variance of <see cref="DesignEffect"/>; undefined where that is. The textbook's interval for survey means; for rare
    /// events it covers too seldom, above all from above: prefer <see cref="KornGraubardInterval"/> or <see cref="WidenedInterval"/>.
    /// Source: Cochran WG, Sampling Techniques, 3rd edition 1977, section 9A (from memory).
    /// </remarks>
    public static Estimate Wald(ClusterSums sums, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        var effect = DesignEffect.Of(sums);
        if (effect.Variance is not { } variance) return Estimate.Undefined(effect.Reason ?? UndefinedReason.NoTrials);
        var p = (double)sums.Events / sums.Trials;
        var half = Quantile.Student(confidence, sums.Clusters - 1) * Math.Sqrt(variance);
        return Estimate.Of(p, new Interval(p - half, p + half).Clip(0, 1), "wald-student", confidence);
    }

    /// <summary>An interval of one of the plain methods on the effective number of trials N/d, with the normal quantile where it uses one.</summary>
    /// <param name="method">The method.</param>
    /// <param name="sums">Sums over the clusters.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Sums that contradict each other, a confidence outside (0, 1), or an unknown method.</exception>
    /// <remarks>
    /// x/d of n/d with d the design effect, at least 1 and 1 where it cannot be estimated. For 30 clusters and more;
    /// with fewer, <see cref="WidenedInterval"/> and <see cref="KornGraubardInterval"/> allow for the uncertainty of d itself.
    /// Source: Rao JNK, Scott AJ, Biometrics 1992;48:577-585.
    /// </remarks>
    public static EffectiveProportionEstimate Effective(IntervalMethod method, ClusterSums sums, double confidence = 0.95)
    {
        var effect = DesignEffect.Of(sums).Value;
        return ProportionInterval.Of(method, sums.Events / effect, sums.Trials / effect, confidence);
    }
}
