using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison;

/// <summary>
/// The score test of "the proportions differ by this much", and its inversion. All four probabilities of the restricted maximum
/// likelihood are kept as sums without cancellation, so nothing is lost at rates near 0 or 1 or at differences near -1, 0 or 1.
/// </summary>
internal static class DifferenceScore
{
    // Beyond this logit a share is 0 or 1 for every purpose.
    private const double Outermost = 80;

    /// <summary>The largest difference that the two-sided score test does not reject.</summary>
    /// <param name="counts">The counts; neither group empty.</param>
    /// <param name="z">The critical value of the normal distribution.</param>
    /// <param name="factor">What the variance is multiplied with.</param>
    public static double Upper(TwoProportions counts, double z, double factor)
    {
        var difference = counts.Difference;

        // 1 - difference and 1 + difference, the room above and below it, from counts and not by subtraction.
        var room = ((double)counts.FirstFailures / counts.FirstTrials) + ((double)counts.SecondSuccesses / counts.SecondTrials);
        if (room == 0) return 1;
        var below = ((double)counts.FirstSuccesses / counts.FirstTrials) + ((double)counts.SecondFailures / counts.SecondTrials);
        var position = Root.Between(
            logit =>
            {
                var above = room * LogitScale.Fraction(logit);
                var variance = factor * Variance(counts, difference + above, room * LogitScale.Fraction(-logit), below + above);
                return above - (z * z * variance / above);
            },
            -Outermost,
            Outermost);
        return Math.Min(1, difference + (room * LogitScale.Fraction(position)));
    }

    /// <summary>The variance of the observed difference under the restricted maximum likelihood.</summary>
    private static double Variance(TwoProportions counts, double difference, double oneMinus, double onePlus)
    {
        if (difference < 0) (counts, difference, oneMinus) = (counts.Swapped, -difference, onePlus);
        var (first, firstOther, second, secondOther) = Restricted(counts, difference, oneMinus);
        return (first * firstOther / counts.FirstTrials) + (second * secondOther / counts.SecondTrials);
    }

    /// <summary>
    /// The most likely proportions whose difference is the one given, 0 or more, each with its complement.
    /// </summary>
    /// <remarks>
    /// With c = 1 - difference and a share s in [0, 1]: second = c s, 1 - first = c (1 - s), first = difference + c s,
    /// 1 - second = difference + c (1 - s). The log-likelihood is concave in s; its slope times s (1 - s) is
    /// x1 c s (1-s) / first - y1 s + x2 (1-s) - y2 c s (1-s) / (1 - second), for x events and y others. It has one root, or none
    /// where x2 = 0 (then s may be 0) or y1 = 0 (then s may be 1).
    /// </remarks>
    internal static (double First, double FirstOther, double Second, double SecondOther) Restricted(TwoProportions counts, double difference, double c)
    {
        double x1 = counts.FirstSuccesses, y1 = counts.FirstFailures, x2 = counts.SecondSuccesses, y2 = counts.SecondFailures;
        if (difference == 0)
        {
            var all = x1 + y1 + x2 + y2;
            return ((x1 + x2) / all, (y1 + y2) / all, (x1 + x2) / all, (y1 + y2) / all);
        }

        if (x2 == 0 && (x1 * c / difference) - y1 - (y2 * c) <= 0) return (difference, c, 0, 1);
        if (y1 == 0 && (x1 * c) + x2 - (y2 * c / difference) >= 0) return (1, 0, c, difference);

        // Divided by the factor that would make the slope 0 at an end where there is no root.
        double Slope(double logit)
        {
            var s = LogitScale.Fraction(logit);
            var t = LogitScale.Fraction(-logit);
            var fromFirst = (x1 * c / (difference + (c * s))) - (y1 == 0 ? 0 : y1 / t);
            var fromSecond = (x2 == 0 ? 0 : x2 / s) - (y2 * c / (difference + (c * t)));
            return (fromFirst + fromSecond) * (x2 == 0 ? 1 : s) * (y1 == 0 ? 1 : t);
        }

        var root = Root.Between(Slope, -Outermost, Outermost);
        var share = LogitScale.Fraction(root);
        var rest = LogitScale.Fraction(-root);
        return (difference + (c * share), c * rest, c * share, difference + (c * rest));
    }
}
