using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Standardisation;

/// <summary>Limits of the expected number of events, from the number seen.</summary>
public static class PoissonInterval
{
    /// <summary>The exact limits (Garwood): each leaves half of the error outside.</summary>
    /// <param name="events">Events seen, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The limits; the lower one is 0 where no event was seen.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// Lower: gamma quantile with shape x, upper: with shape x + 1. Covers always at least the nominal share, with few events much more. Source: Garwood F,
    /// Biometrika 1936;28:437-442 (from memory).
    /// </remarks>
    public static Interval Exact(long events, double confidence = 0.95)
    {
        Guard.NotNegative(events);
        Guard.Confidence(confidence);
        var tail = (1 - confidence) / 2;
        return new Interval(
            events == 0 ? 0 : GammaTail.Quantile(events, tail, upperTail: false),
            events == 0 ? -Math.Log(tail) : GammaTail.Quantile(events + 1.0, tail, upperTail: true));
    }

    /// <summary>Byar's approximation.</summary>
    /// <param name="events">Events seen, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The limits; the lower one is 0 where no event was seen.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// x (1 - 1 / 9x - z / 3√x)³ and the same with x + 1 and plus; within a hundredth of the exact limits from 5 events on. Source: Breslow NE, Day NE,
    /// Statistical Methods in Cancer Research II, 1987, p. 69 (from memory).
    /// </remarks>
    public static Interval Byar(long events, double confidence = 0.95)
    {
        Guard.NotNegative(events);
        Guard.Confidence(confidence);
        var z = Quantile.Normal(confidence);
        double x = events, y = x + 1;
        var lower = events == 0 ? 0 : Math.Max(0, x * Math.Pow(1 - (1 / (9 * x)) - (z / (3 * Math.Sqrt(x))), 3));
        return new Interval(lower, y * Math.Pow(1 - (1 / (9 * y)) + (z / (3 * Math.Sqrt(y))), 3));
    }
}
