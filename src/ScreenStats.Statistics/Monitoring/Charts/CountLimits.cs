using MathNet.Numerics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>Tails and quantiles of counts. A quantile is the smallest count whose lower tail is at least the probability asked.</summary>
internal static class CountLimits
{
    public static double BinomialOrMore(long x, long n, double p) => x <= 0 ? 1 : x > n ? 0 : Binomial.BetaLower(x, n - x + 1, p, 1 - p);

    public static double BinomialOrLess(long x, long n, double p) => x < 0 ? 0 : x >= n ? 1 : Binomial.BetaLower(n - x, x + 1, 1 - p, p);

    public static double PoissonOrMore(long x, double mean) => x <= 0 ? 1 : SpecialFunctions.GammaLowerRegularized(x, mean);

    public static double PoissonOrLess(long x, double mean) => x < 0 ? 0 : SpecialFunctions.GammaUpperRegularized(x + 1, mean);

    /// <summary>The smallest and the largest count inside limits that leave at most the given chance outside on each side.</summary>
    public static (long Fewest, long Most) BinomialInside(long n, double p, double tail) =>
        (First(0, n, x => BinomialOrLess(x, n, p) >= tail), First(0, n, x => BinomialOrMore(x + 1, n, p) <= tail));

    public static (long Fewest, long Most) PoissonInside(double mean, double tail)
    {
        var end = (long)Math.Ceiling(mean + (50 * Math.Sqrt(mean)) + 1000);
        return (First(0, end, x => PoissonOrLess(x, mean) >= tail), First(0, end, x => PoissonOrMore(x + 1, mean) <= tail));
    }

    /// <summary>The first count that fulfils a condition which, once fulfilled, stays so; the end is taken to fulfil it.</summary>
    public static long First(long start, long end, Func<long, bool> condition)
    {
        while (start < end)
        {
            var middle = start + ((end - start) / 2);
            if (condition(middle)) end = middle;
            else start = middle + 1;
        }

        return start;
    }
}
