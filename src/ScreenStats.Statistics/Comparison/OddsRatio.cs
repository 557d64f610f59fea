using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison;

/// <summary>Intervals of the odds ratio of two independent proportions, one call per method.</summary>
/// <remarks>
/// Odds are events over others. Both take events of trials in each group and a confidence in (0, 1), and throw
/// <see cref="ArgumentOutOfRangeException"/> for counts that cannot be. Where the second group has no event, or the first nothing else,
/// the odds ratio has no upper bound: null with the reason. Runs of the same person count as independent.
/// </remarks>
public static class OddsRatio
{
    /// <summary>Woolf's interval on the logarithm of the odds ratio.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The odds ratio; limits only where none of the four counts is 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// a d / (b c) times exp(±z sqrt(1/a + 1/b + 1/c + 1/d)). Nothing is added to counts of 0. Covers the nominal share or somewhat more.
    /// Source: Woolf B, Ann Hum Genet 1955;19:251-253.
    /// </remarks>
    public static ContrastEstimate Woolf(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.Woolf, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>The exact interval given both margins, around the conditional maximum likelihood estimate.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>
    /// The conditional odds ratio, at which the observed number of events in the first group is the expected one (it differs a little from
    /// a d / (b c)), with its limits.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// At the lower limit the chance of at least the observed number, given both margins, is (1 - confidence)/2; at the upper limit that of at
    /// most the observed number. Relative error below 1e-9, up to tens of millions of runs. Never covers less than the nominal share.
    /// Source: Cornfield J, Proc Third Berkeley Symp 1956;4:135-148 (from memory); Fisher RA, J R Stat Soc 1935;98:39-82 (from memory).
    /// </remarks>
    public static ContrastEstimate ConditionalExact(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.ConditionalExact, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>The interval by a method chosen at run time.</summary>
    /// <param name="method">One of the methods of an odds ratio (<see cref="ContrastMethods.Of"/>).</param>
    /// <param name="counts">The counts of both groups.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The odds ratio with its limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1), or the method is not one of an odds ratio.</exception>
    public static ContrastEstimate Of(ContrastMethod method, TwoProportions counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (method is not (ContrastMethod.Woolf or ContrastMethod.ConditionalExact))
            throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method for an odds ratio of independent proportions.");
        ContrastEstimate Result(Bound value, Bound lower, Bound upper) => new(ContrastMeasure.OddsRatio, method, confidence, value, lower, upper);
        if (counts.IsEmpty) return Result(UndefinedReason.NoTrials, UndefinedReason.NoTrials, UndefinedReason.NoTrials);

        var anything = counts is { FirstSuccesses: 0, SecondSuccesses: 0 } ? UndefinedReason.NoEventsInEitherGroup
            : counts is { FirstFailures: 0, SecondFailures: 0 } ? UndefinedReason.OnlyEventsInBothGroups
            : (UndefinedReason?)null;
        var isZero = anything is null && (counts.FirstSuccesses == 0 || counts.SecondFailures == 0);
        var isUnbounded = anything is null && (counts.SecondSuccesses == 0 || counts.FirstFailures == 0);
        Bound edge = anything ?? UndefinedReason.OddsRatioUnbounded;
        var z = Quantile.Normal(confidence);
        if (method == ContrastMethod.Woolf)
        {
            if (anything is not null || isUnbounded) return Result(edge, UndefinedReason.NoStandardError, UndefinedReason.NoStandardError);
            if (isZero) return Result(0.0, UndefinedReason.NoStandardError, UndefinedReason.NoStandardError);
            var value = (double)counts.FirstSuccesses / counts.FirstFailures / ((double)counts.SecondSuccesses / counts.SecondFailures);
            var half = z * Math.Sqrt(
                (1.0 / counts.FirstSuccesses) + (1.0 / counts.FirstFailures) + (1.0 / counts.SecondSuccesses) + (1.0 / counts.SecondFailures));
            return Result(value, value * Math.Exp(-half), value * Math.Exp(half));
        }

        if (anything is not null) return Result(edge, 0.0, edge);
        var tail = (1 - confidence) / 2;
        return Result(
            isUnbounded ? edge : isZero ? 0.0 : ConditionalOdds.MostLikely(counts),
            isZero ? 0.0 : ConditionalOdds.Lower(counts, tail, z),
            isUnbounded ? edge : 1 / ConditionalOdds.Lower(counts.Swapped, tail, z));
    }
}
