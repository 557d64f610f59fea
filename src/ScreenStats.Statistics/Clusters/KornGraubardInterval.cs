using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>Korn and Graubard's interval: the exact interval on the effective number of trials, adjusted for few clusters.</summary>
public static class KornGraubardInterval
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "korn-graubard";

    /// <summary>The interval from sums over the clusters.</summary>
    /// <param name="sums">Sums over the clusters.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Sums that contradict each other, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// n* = p (1 - p) / v, multiplied by (t with N - 1 degrees of freedom / t with m - 1)², at most N; then Clopper and Pearson's limits with
    /// p n* of n* as real numbers. Where no design effect can be estimated (see <see cref="DesignEffect"/>), n* = N without adjustment, and
    /// the result says why. Seldom covers less than it says, for rare events too; wide with few clusters.
    /// Source: Korn EL, Graubard BI, Surv Methodol 1998;24:193-201 (formula from memory).
    /// </remarks>
    public static KornGraubardEstimate Of(ClusterSums sums, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        var effect = DesignEffect.Of(sums);
        if (sums.Trials == 0) return new KornGraubardEstimate(effect, 0, null, confidence, null);
        double effective = sums.Trials;
        long? degreesOfFreedom = null;
        if (effect.Raw is { } raw)
        {
            degreesOfFreedom = sums.Clusters - 1;
            var ratio = Quantile.Student(confidence, sums.Trials - 1) / Quantile.Student(confidence, sums.Clusters - 1);

            // Where the clusters do not differ at all the effective number has no bound, and the cap holds.
            if (raw > 0) effective = Math.Min(effective, sums.Trials / raw * (ratio * ratio));
        }

        var share = (double)sums.Events / sums.Trials;
        var successes = sums.Events == sums.Trials ? effective : Math.Min(effective, share * effective);
        var interval = ProportionInterval.Of(IntervalMethod.ClopperPearson, successes, effective, confidence).Interval;
        return new KornGraubardEstimate(effect, effective, degreesOfFreedom, confidence, interval?.Including(share));
    }
}
