using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>Expected against observed false positives, on the specificity scale.</summary>
/// <remarks>
/// A prevalence corrected by a kit's own accuracy cannot judge that kit's predictive value: that would be circular. Refuted
/// positives per valid test need no prevalence. They fall short of the false-positive rate only by the share of infected people among
/// the tested, which the comparison leaves out: at a prevalence of 1 in 100 the rate observed is 1 in 100 of itself too low.
/// </remarks>
public static class SpecificityComparison
{
    /// <summary>Compares refuted positives per valid test with one minus a stated specificity.</summary>
    /// <param name="refuted">Positives the confirmatory test refuted.</param>
    /// <param name="withoutConclusiveResult">Positives that are unresolved, pending or unverified.</param>
    /// <param name="validTests">Valid tests: negative and positive runs; at least the two counts before it together.</param>
    /// <param name="designEffect">The design effect of the refuted positives, 1 or more.</param>
    /// <param name="clusters">The number of clusters it was computed from.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>Both bounds, the stated rate, the differences and the outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// <para>The true count of refuted positives lies between the lowest (those refuted) and the highest (all without a conclusive result
    /// refuted as well). At either end the interval of the difference observed minus stated combines the widened Wilson interval of the
    /// observed rate with the interval of the stated one by square-and-add: lower d - sqrt((o - l)² + (U - s)²), upper
    /// d + sqrt((u - o)² + (s - L)²), where (l, u) and (L, U) are the intervals of observed o and stated s. Source: Newcombe RG, Stat Med
    /// 1998;17:873-890, method 10; Zou GY, Donner A, Stat Med 2008;27:1693-1702 (from memory) for intervals of any kind.</para>
    /// <para>The rule: <b>not compatible</b> where the joint interval, from the lower limit at the lowest to the upper limit at the
    /// highest, leaves out 0: the stated specificity is contradicted on the same side whatever the missing follow-up would have shown.
    /// <b>Compatible</b> where the interval at the lowest and that at the highest both hold 0. (It follows where the whole observed interval lies
    /// inside the stated one.) <b>Cannot tell</b> otherwise: the two ends disagree, so the missing follow-up decides; or there are no
    /// valid tests. Compatible is not confirmed: few tests contradict nothing.</para>
    /// <para>A stated specificity that holds is found not compatible in at most about 1 - confidence of cases, in fewer where
    /// follow-up is missing.</para>
    /// </remarks>
    public static SpecificityFinding Of(
        long refuted, long withoutConclusiveResult, long validTests, double designEffect, long clusters, AccuracyStatement specificity, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(specificity);
        Guard.NotNegative(refuted);
        Guard.NotNegative(withoutConclusiveResult);
        if (validTests < 0 || refuted > validTests || withoutConclusiveResult > validTests - refuted)
            throw new ArgumentOutOfRangeException(nameof(validTests), validTests, "The valid tests must be at least the positives counted.");
        var lowest = WidenedInterval.Wilson(refuted, validTests, designEffect, clusters, confidence);
        var highest = WidenedInterval.Wilson(refuted + withoutConclusiveResult, validTests, designEffect, clusters, confidence);
        var stated = specificity.Complement();
        var statedInterval = stated.IntervalAt(confidence);
        var low = Difference(lowest, stated.Value, statedInterval);
        var high = Difference(highest, stated.Value, statedInterval);
        return new SpecificityFinding(lowest, highest, specificity, confidence, low, high, Decide(low, high));
    }

    /// <summary>The same for independent tests (design effect 1).</summary>
    /// <param name="refuted">Positives the confirmatory test refuted.</param>
    /// <param name="withoutConclusiveResult">Positives that are unresolved, pending or unverified.</param>
    /// <param name="validTests">Valid tests: negative and positive runs.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>Both bounds, the stated rate, the differences and the outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static SpecificityFinding Of(long refuted, long withoutConclusiveResult, long validTests, AccuracyStatement specificity, double confidence = 0.95) =>
        Of(refuted, withoutConclusiveResult, validTests, 1, 0, specificity, confidence);

    private static Interval? Difference(WidenedEstimate observed, double stated, Interval statedInterval)
    {
        if (observed.Estimate is not { } rate || observed.Interval is not { } interval) return null;
        var difference = rate - stated;
        return new Interval(
            difference - double.Hypot(rate - interval.Lower, statedInterval.Upper - stated),
            difference + double.Hypot(interval.Upper - rate, stated - statedInterval.Lower));
    }

    private static SpecificityOutcome Decide(Interval? lowest, Interval? highest)
    {
        if (lowest is not { } low || highest is not { } high) return SpecificityOutcome.CannotTell;
        if (low.Lower > 0 || high.Upper < 0) return SpecificityOutcome.NotCompatible;
        return low.Contains(0) && high.Contains(0) ? SpecificityOutcome.Compatible : SpecificityOutcome.CannotTell;
    }
}
