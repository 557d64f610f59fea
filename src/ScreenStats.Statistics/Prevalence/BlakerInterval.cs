using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>Blaker's exact interval of one proportion.</summary>
/// <remarks>
/// The rates p whose acceptability exceeds 1 - confidence: the smaller tail at x plus the largest tail on the other side that is no larger.
/// The set can have gaps; the interval from its lowest to its highest rate is given. Source: Blaker H, Can J Stat 2000;28:783-798 (from memory).
/// </remarks>
internal static class BlakerInterval
{
    public static Interval Of(long x, long n, double confidence)
    {
        var outer = ExactInterval.ClopperPearson(x, n, tail: (1 - confidence) / 2);
        var level = 1 - confidence;
        var lower = x == 0 ? 0 : Lower(x, n, level, outer.Lower);
        var upper = x == n ? 1 : 1 - Lower(n - x, n, level, 1 - outer.Upper);
        return new Interval(lower, Math.Max(lower, upper));
    }

    /// <summary>
    /// Below x/n the smaller tail is P(X >= x), which rises with p; the other tail P(X &lt;= k) falls with p and jumps up by one count each time
    /// that the next P(X &lt;= k) no longer exceeds it. Where it jumps the acceptability rises too, between jumps it rises or falls,
    /// once each (Klaschka J, Comput Stat 2010, from memory), so the first rate above the level is sought piece by piece.
    /// </summary>
    private static double Lower(long x, long n, double level, double start)
    {
        var p = start;
        var k = OtherCount(x, n, p);
        for (var piece = 0; piece < 1000; piece++)
        {
            if (Acceptability(x, n, k, p) >= level) return p;

            // The piece with this k ends where the next count of the other tail comes in.
            var end = k + 1 < x ? Jump(x, n, k + 1, p) : (double)x / n;
            var crossing = Rise(x, n, k, p, end, level);
            if (crossing is { } found) return found;
            if (k + 1 >= x) return end;
            p = end;
            k++;
        }

        return p;
    }

    /// <summary>The largest k below x with P(X &lt;= k) no larger than P(X >= x); -1 where there is none.</summary>
    private static long OtherCount(long x, long n, double p)
    {
        var tail = UpperTail(x, n, p);
        long low = -1, high = x;
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (LowerTail(middle, n, p) <= tail) low = middle;
            else high = middle;
        }

        return low;
    }

    private static double Acceptability(long x, long n, long k, double p) => UpperTail(x, n, p) + (k < 0 ? 0 : LowerTail(k, n, p));

    /// <summary>The rate above p at which P(X &lt;= k) comes down to P(X >= x).</summary>
    private static double Jump(long x, long n, long k, double p)
    {
        double low = p, high = (double)x / n;
        if (LowerTail(k, n, high) > UpperTail(x, n, high)) return high;
        for (var step = 0; step < 200 && high - low > 1e-15 * high; step++)
        {
            var middle = (low + high) / 2;
            if (LowerTail(k, n, middle) > UpperTail(x, n, middle)) low = middle;
            else high = middle;
        }

        return high;
    }

    /// <summary>The rate between two at which the acceptability with this k first reaches the level, where it does.</summary>
    private static double? Rise(long x, long n, long k, double from, double to, double level)
    {
        // With k fixed it falls, then rises (or only rises): nothing is crossed unless its end reaches the level.
        if (Acceptability(x, n, k, to) < level) return null;
        double low = from, high = to;
        for (var step = 0; step < 200 && high - low > 1e-15 * high; step++)
        {
            var middle = (low + high) / 2;
            if (Acceptability(x, n, k, middle) < level) low = middle;
            else high = middle;
        }

        return high;
    }

    private static double UpperTail(long x, long n, double p) => x <= 0 ? 1 : Binomial.BetaLower(x, n - x + 1.0, p, 1 - p);

    private static double LowerTail(long k, long n, double p) => k < 0 ? 0 : k >= n ? 1 : Binomial.BetaUpper(k + 1.0, n - k, p, 1 - p);
}
