using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Economics.Uncertainty;

/// <summary>Gamma distributions by their limits, by false position on the logarithm of the shape.</summary>
internal static class GammaLimits
{
    // Below this shape the upper quantile over the mean falls again.
    private const double LeastShape = 0.05;
    private const double MostLogarithm = 64;

    /// <summary>The shape and scale of the gamma distribution with both quantiles at two ends; the upper one at most a million times the lower one.</summary>
    /// <param name="lower">The lower end, above 0.</param>
    /// <param name="upper">The upper end, above it.</param>
    /// <param name="tail">The chance below the lower end, and above the upper one.</param>
    public static (double Shape, double Scale) Both(double lower, double upper, double tail)
    {
        // The distance of the quantiles on the scale of the logarithm falls as the shape grows; of a normal distribution it is 2 z over the root of the shape.
        var distance = Math.Log(upper / lower);
        double Excess(double logarithm) => Math.Log(GammaTail.Quantile(Math.Exp(logarithm), tail, upperTail: true) / GammaTail.Quantile(Math.Exp(logarithm), tail, upperTail: false)) - distance;
        var start = 2 * Math.Log(2 * Quantile.NormalTail(tail) / distance);
        var (low, high) = (start - 1, start + 1);
        while (Excess(low) < 0) low -= 1;
        while (Excess(high) > 0 && high < MostLogarithm) high += 1;
        var shape = Math.Exp(Root(Excess, low, high));
        return (shape, upper / GammaTail.Quantile(shape, tail, upperTail: true));
    }

    /// <summary>The shape of the gamma distribution whose upper quantile is so many times its mean; null where there is none.</summary>
    /// <param name="ratio">Upper end over mean.</param>
    /// <param name="tail">The chance above the upper end.</param>
    public static double? Upper(double ratio, double tail)
    {
        double Excess(double logarithm) => (GammaTail.Quantile(Math.Exp(logarithm), tail, upperTail: true) / Math.Exp(logarithm)) - ratio;
        if (!(ratio > 1)) return null;
        var high = 2 * Math.Log(Quantile.NormalTail(tail) / (ratio - 1));
        while (Excess(high) > 0 && high < MostLogarithm) high += 1;
        var low = high;
        while (Excess(low) < 0)
        {
            low -= 0.25;
            if (Math.Exp(low) < LeastShape) return null;
        }

        return Math.Exp(Root(Excess, low, high));
    }

    // Above 0 at the low end, below it at the high one; the end that stays is given half its weight, so that it moves next time (the Illinois rule).
    private static double Root(Func<double, double> excess, double low, double high)
    {
        var (atLow, atHigh) = (excess(low), excess(high));
        for (var step = 0; step < 200 && high - low > 1e-15 * Math.Max(1, Math.Abs(high)); step++)
        {
            var next = ((low * atHigh) - (high * atLow)) / (atHigh - atLow);
            if (!(next > low && next < high)) next = (low + high) / 2;
            if (next <= low || next >= high) break;
            var at = excess(next);
            if (Math.Abs(at) < 1e-14) return next;
            if (at > 0) (low, atLow, atHigh) = (next, at, atHigh / 2);
            else (high, atHigh, atLow) = (next, at, atLow / 2);
        }

        return (low + high) / 2;
    }
}
