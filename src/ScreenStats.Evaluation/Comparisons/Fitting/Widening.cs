using ScreenStats.Statistics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>Limits of a count made as far out as a normal quantile times the root of a design effect.</summary>
internal static class Widening
{
    // Beyond this many standard errors a confidence is 1 to all its digits; what is left is taken in proportion.
    private const double Farthest = 6;

    /// <summary>The limits that a method gives, widened.</summary>
    /// <param name="value">The figure, inside of its limits.</param>
    /// <param name="confidence">Confidence of the limits.</param>
    /// <param name="designEffect">How many times clusters raise the variance, 1 or more.</param>
    /// <param name="limits">The limits by the method at a confidence.</param>
    public static Interval? Of(double value, double confidence, double designEffect, Func<double, Interval?> limits)
    {
        if (designEffect <= 1) return limits(confidence);
        var wanted = Quantile.Normal(confidence) * Math.Sqrt(designEffect);
        var reached = Math.Min(wanted, Farthest);
        if (limits(Confidence(reached)) is not { } interval) return null;
        if (reached == wanted) return interval;
        var more = wanted / reached;
        var lower = value > 0 && interval.Lower > 0 ? value * Math.Pow(interval.Lower / value, more) : 0;
        return new Interval(lower, value + ((interval.Upper - value) * more));
    }

    /// <summary>The confidence that a normal quantile stands for.</summary>
    public static double Confidence(double quantile) => 1 - TailProbability.Normal(quantile);
}
