using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison;

/// <summary>Intervals of the ratio of two independent proportions, first over second, one call per method.</summary>
/// <remarks>
/// All take events of trials in each group and a confidence in (0, 1), and throw <see cref="ArgumentOutOfRangeException"/> for counts
/// that cannot be. Where the second group has no event the ratio and its upper limit are unbounded: null with the reason. Where neither
/// has one, or a group has no trials, the ratio is undefined. Runs of the same person count as independent.
/// </remarks>
public static class ProportionRatio
{
    /// <summary>Katz's interval on the logarithm of the ratio.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio; limits only where both groups have events and not everything counted was one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// r exp(±z sqrt(1/x1 - 1/n1 + 1/x2 - 1/n2)). Nothing is added to counts of 0. Too narrow with few events. Source: Katz D, Baptista J,
    /// Azen SP, Pike MC, Biometrics 1978;34:469-474.
    /// </remarks>
    public static ContrastEstimate Katz(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.Katz, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>Koopman's score interval.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with its limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// All ratios R with (p1 - R p2)² &lt;= z² (P1 (1 - P1) / n1 + R² P2 (1 - P2) / n2), where P2 and P1 = R P2 are the most likely
    /// proportions with that ratio. Covers the nominal share on average, with few events too. Source: Koopman PAR, Biometrics
    /// 1984;40:513-517.
    /// </remarks>
    public static ContrastEstimate Koopman(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.Koopman, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>Miettinen and Nurminen's score interval: Koopman's with the variance times N / (N - 1).</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">Trials in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">Trials in the second group, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with its limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>See <see cref="Koopman"/>; a little wider. Source: Miettinen O, Nurminen M, Stat Med 1985;4:213-226.</remarks>
    public static ContrastEstimate MiettinenNurminen(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials, double confidence = 0.95) =>
        Of(ContrastMethod.MiettinenNurminen, new TwoProportions(firstSuccesses, firstTrials, secondSuccesses, secondTrials), confidence);

    /// <summary>The interval by a method chosen at run time.</summary>
    /// <param name="method">One of the methods of a ratio (<see cref="ContrastMethods.Of"/>).</param>
    /// <param name="counts">The counts of both groups.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with its limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1), or the method is not one of a ratio.</exception>
    public static ContrastEstimate Of(ContrastMethod method, TwoProportions counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (method is not (ContrastMethod.Katz or ContrastMethod.Koopman or ContrastMethod.MiettinenNurminen))
            throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method for a ratio of independent proportions.");
        if (counts.IsEmpty)
        {
            return new ContrastEstimate(
                ContrastMeasure.Ratio, method, confidence, UndefinedReason.NoTrials, UndefinedReason.NoTrials, UndefinedReason.NoTrials);
        }

        var z = Quantile.Normal(confidence);
        var value = Value(counts);
        if (method == ContrastMethod.Katz) return Logarithmic(counts, value, z, confidence);
        var all = (double)counts.FirstTrials + counts.SecondTrials;
        var factor = method == ContrastMethod.Koopman ? 1 : all / (all - 1);
        Bound lower = counts.FirstSuccesses == 0 ? 0.0 : RatioScore.Lower(counts, z, factor);
        Bound upper = counts.SecondSuccesses > 0 ? 1 / RatioScore.Lower(counts.Swapped, z, factor) : value.Reason!.Value;
        return new ContrastEstimate(ContrastMeasure.Ratio, method, confidence, value, lower, upper);
    }

    private static Bound Value(TwoProportions counts)
    {
        if (counts.SecondSuccesses > 0)
            return (double)counts.FirstSuccesses / counts.FirstTrials / ((double)counts.SecondSuccesses / counts.SecondTrials);
        return counts.FirstSuccesses == 0 ? UndefinedReason.NoEventsInEitherGroup : UndefinedReason.NoEventsInSecondGroup;
    }

    private static ContrastEstimate Logarithmic(TwoProportions counts, Bound value, double z, double confidence)
    {
        var square = ((double)counts.FirstFailures / counts.FirstTrials / counts.FirstSuccesses)
            + ((double)counts.SecondFailures / counts.SecondTrials / counts.SecondSuccesses);
        if (value.Value is not > 0 || square == 0)
        {
            return new ContrastEstimate(
                ContrastMeasure.Ratio, ContrastMethod.Katz, confidence, value, UndefinedReason.NoStandardError, UndefinedReason.NoStandardError);
        }

        var half = z * Math.Sqrt(square);
        return new ContrastEstimate(
            ContrastMeasure.Ratio, ContrastMethod.Katz, confidence, value, value.Value.Value * Math.Exp(-half), value.Value.Value * Math.Exp(half));
    }
}
