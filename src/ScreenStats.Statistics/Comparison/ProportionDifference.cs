using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Comparison;

/// <summary>Intervals of the difference of two independent proportions, first minus second, one call per method.</summary>
/// <remarks>
/// All take events of trials in each group and a confidence in (0, 1), and throw <see cref="ArgumentOutOfRangeException"/> for counts
/// that cannot be. Where a group has no trials the result is undefined. Runs of the same person count as independent.
/// </remarks>
public static class ProportionDifference
{
    /// <summary>Newcombe's hybrid score interval: both Wilson intervals, squared and added.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The difference with its limits in [-1, 1]; undefined where a group has no trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// Lower d - sqrt((p1 - l1)² + (u2 - p2)²), upper d + sqrt((u1 - p1)² + (p2 - l2)²), with (l, u) the Wilson limits of each. Covers the
    /// nominal share on average, in small groups a little less near 0 and 1. Source: Newcombe RG, Stat Med 1998;17:873-890, method 10.
    /// </remarks>
    public static ContrastEstimate Newcombe(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.Newcombe, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>Newcombe's hybrid score interval with continuity correction.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The difference with its limits in [-1, 1]; undefined where a group has no trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// As <see cref="Newcombe"/> from Wilson limits with continuity correction. Covers nearly always at least the nominal share. Source:
    /// Newcombe RG, Stat Med 1998;17:873-890, method 11.
    /// </remarks>
    public static ContrastEstimate NewcombeContinuity(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.NewcombeContinuity, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>Miettinen and Nurminen's score interval.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The difference with its limits in [-1, 1]; undefined where a group has no trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// All differences D with (d - D)² &lt;= z² N / (N - 1) (P1 (1 - P1) / n1 + P2 (1 - P2) / n2), where P1 and P2 = P1 - D are the most
    /// likely proportions with that difference. Limits agree with a brute-force maximisation to 1e-12. Covers the nominal share on average,
    /// and better than <see cref="Newcombe"/> where the groups differ much in size. Source: Miettinen O, Nurminen M, Stat Med 1985;4:213-226.
    /// </remarks>
    public static ContrastEstimate MiettinenNurminen(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.MiettinenNurminen, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>The interval by a method chosen at run time.</summary>
    /// <param name="method">One of the methods of a difference (<see cref="ContrastMethods.Of"/>).</param>
    /// <param name="counts">The counts of both groups.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The difference with its limits; undefined where a group has no trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1), or the method is not one of a difference.</exception>
    public static ContrastEstimate Of(ContrastMethod method, TwoProportions counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (counts.IsEmpty)
        {
            return new ContrastEstimate(
                ContrastMeasure.Difference, method, confidence, UndefinedReason.NoTrials, UndefinedReason.NoTrials, UndefinedReason.NoTrials);
        }

        var z = Quantile.Normal(confidence);
        var interval = method switch
        {
            ContrastMethod.Newcombe => Hybrid(counts, ScoreInterval.Wilson, z),
            ContrastMethod.NewcombeContinuity => Hybrid(counts, ScoreInterval.WilsonContinuity, z),
            ContrastMethod.MiettinenNurminen => Score(counts, z),
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method for a difference of independent proportions."),
        };
        interval = interval.Clip(-1, 1).Including(counts.Difference);
        return new ContrastEstimate(ContrastMeasure.Difference, method, confidence, counts.Difference, interval.Lower, interval.Upper);
    }

    /// <summary>The difference of two independent figures whose intervals are known, by square-and-add.</summary>
    /// <param name="first">The first figure, inside its interval.</param>
    /// <param name="firstInterval">Its interval.</param>
    /// <param name="second">The second figure, inside its interval.</param>
    /// <param name="secondInterval">Its interval, of the same confidence.</param>
    /// <returns>The interval of first minus second.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its interval.</exception>
    /// <remarks>
    /// The formula of <see cref="Newcombe"/> for intervals of any kind, for instance widened for repeated testing of the same people.
    /// Source: Zou GY, Donner A, Stat Med 2008;27:1693-1702 (from memory).
    /// </remarks>
    public static Interval SquareAndAdd(double first, Interval firstInterval, double second, Interval secondInterval)
    {
        if (!firstInterval.Contains(first)) throw new ArgumentOutOfRangeException(nameof(first), first, "The figure must lie in its interval.");
        if (!secondInterval.Contains(second)) throw new ArgumentOutOfRangeException(nameof(second), second, "The figure must lie in its interval.");
        var difference = first - second;
        return new Interval(
            difference - double.Hypot(first - firstInterval.Lower, secondInterval.Upper - second),
            difference + double.Hypot(firstInterval.Upper - first, second - secondInterval.Lower));
    }

    private static Interval Hybrid(TwoProportions counts, Func<double, double, double, Interval> limits, double z)
    {
        var first = (double)counts.FirstSuccesses / counts.FirstTrials;
        var second = (double)counts.SecondSuccesses / counts.SecondTrials;
        return SquareAndAdd(
            first,
            limits(counts.FirstSuccesses, counts.FirstTrials, z).Including(first),
            second,
            limits(counts.SecondSuccesses, counts.SecondTrials, z).Including(second));
    }

    private static Interval Score(TwoProportions counts, double z)
    {
        var all = (double)counts.FirstTrials + counts.SecondTrials;
        var factor = all / (all - 1);
        return new Interval(-DifferenceScore.Upper(counts.Swapped, z, factor), DifferenceScore.Upper(counts, z, factor));
    }
}
