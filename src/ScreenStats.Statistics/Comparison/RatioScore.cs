using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison;

/// <summary>The score test of "the proportions have this ratio", and its inversion over the logarithm of the ratio.</summary>
internal static class RatioScore
{
    /// <summary>The smallest ratio first / second that the two-sided score test does not reject; 0 where the first group has no event.</summary>
    /// <param name="counts">The counts; neither group empty, at least one event.</param>
    /// <param name="z">The critical value of the normal distribution.</param>
    /// <param name="factor">What the variance is multiplied with.</param>
    public static double Lower(TwoProportions counts, double z, double factor)
    {
        if (counts.FirstSuccesses == 0) return 0;
        double Excess(double logarithm) => Statistic(counts, Math.Exp(logarithm), factor) - z;

        // A guess at the length of the interval on the logarithm; the bracket grows from there.
        var step = z * Math.Sqrt((1.0 / counts.FirstSuccesses) + (1.0 / Math.Max(counts.SecondSuccesses, 0.5)));
        var first = (double)counts.FirstSuccesses / counts.FirstTrials;
        double high;
        if (counts.SecondSuccesses > 0)
        {
            high = Math.Log(first / ((double)counts.SecondSuccesses / counts.SecondTrials));
        }
        else
        {
            high = Math.Log(first * counts.SecondTrials);
            while (Excess(high) > 0) high += step;
        }

        var low = high - step;
        while (Excess(low) < 0)
        {
            if (counts.SecondSuccesses == 0) high = low;
            step *= 2;
            low -= step;
        }

        // At the observed ratio the statistic is 0, or 0 / 0 where everything was an event.
        return Math.Exp(Root.Between(logarithm => logarithm == high && counts.SecondSuccesses > 0 ? -z : Excess(logarithm), low, high));
    }

    private static double Statistic(TwoProportions counts, double ratio, double factor)
    {
        var (second, secondOther) = Restricted(counts, ratio);
        var (first, firstOther) = Restricted(counts.Swapped, 1 / ratio);
        var excess = ((double)counts.FirstSuccesses / counts.FirstTrials) - (ratio * counts.SecondSuccesses / counts.SecondTrials);
        var variance = (first * firstOther / counts.FirstTrials) + (ratio * ratio * second * secondOther / counts.SecondTrials);
        return excess / Math.Sqrt(factor * variance);
    }

    /// <summary>The most likely second proportion, and its complement, where the first is the ratio times the second.</summary>
    /// <remarks>
    /// The smaller root of N r p² - (r (n1 + x2) + x1 + n2) p + x1 + x2 = 0. Its discriminant is
    /// (r (n1 + x2) - (x1 + n2))² + 4 r y1 y2, a sum of squares; for 1 - p the last coefficient becomes (r - 1) y2.
    /// </remarks>
    internal static (double Second, double SecondOther) Restricted(TwoProportions counts, double ratio)
    {
        double x1 = counts.FirstSuccesses, n1 = counts.FirstTrials, x2 = counts.SecondSuccesses, n2 = counts.SecondTrials;
        double y1 = counts.FirstFailures, y2 = counts.SecondFailures;
        var all = n1 + n2;
        var one = ratio * (n1 + x2);
        var other = x1 + n2;
        var root = Math.Sqrt(((one - other) * (one - other)) + (4 * ratio * y1 * y2));
        var second = 2 * (x1 + x2) / (one + other + root);

        // 2 N r - (r (n1 + x2) + x1 + n2), which may have either sign.
        var slope = (ratio * (n1 + n2 + y2)) - other;
        var secondOther = slope >= 0 ? (slope + root) / (2 * all * ratio) : 2 * (ratio - 1) * y2 / (slope - root);
        return (Math.Min(1, second), Math.Clamp(secondOther, 0, 1));
    }
}
