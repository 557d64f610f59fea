using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Proportions;

/// <summary>
/// Limits that solve a tail equation. Each is found on the logit scale of the rate by Newton steps on the logarithm of the
/// tail, kept inside a bracket; so the relative error does not grow as the rate becomes small.
/// </summary>
internal static class ExactInterval
{
    public static Interval ClopperPearson(long x, long n, double confidence)
    {
        var tail = (1 - confidence) / 2;
        var failures = n - x;
        var lower = x == 0 ? 0 : failures == 0 ? Math.Exp(Math.Log(tail) / n) : BetaQuantile(x, failures + 1.0, tail, upperTail: false);
        var upper = failures == 0 ? 1 : x == 0 ? -double.ExpM1(Math.Log(tail) / n) : BetaQuantile(x + 1.0, failures, tail, upperTail: true);
        return new Interval(lower, upper);
    }

    public static Interval Jeffreys(long x, long n, double confidence)
    {
        var tail = (1 - confidence) / 2;
        var a = x + 0.5;
        var b = n - x + 0.5;
        return new Interval(
            x == 0 ? 0 : BetaQuantile(a, b, tail, upperTail: false),
            x == n ? 1 : BetaQuantile(a, b, tail, upperTail: true));
    }

    public static Interval MidP(long x, long n, double confidence)
    {
        var tail = (1 - confidence) / 2;
        var lower = x == 0 ? 0 : x == n ? Math.Exp(Math.Log(2 * tail) / n) : MidPLimit(x, n, tail, lower: true);
        var upper = x == n ? 1 : x == 0 ? -double.ExpM1(Math.Log(2 * tail) / n) : MidPLimit(x, n, tail, lower: false);
        return new Interval(lower, upper);
    }

    /// <summary>The rate that leaves the given probability of Beta(a, b) below it, or above it.</summary>
    internal static double BetaQuantile(double a, double b, double tail, bool upperTail)
    {
        var start = Logit((a + 0.5) / (a + b + 1));
        return Solve(
            start,
            tail,
            upperTail,
            (p, q) => upperTail ? Binomial.BetaUpper(a, b, p, q) : Binomial.BetaLower(a, b, p, q),
            (p, q) => Binomial.BetaKernel(a, b, p, q));
    }

    private static double MidPLimit(long x, long n, double tail, bool lower)
    {
        double failures = n - x;
        return Solve(
            Logit((x + 0.5) / (n + 1.0)),
            tail,
            !lower,
            (p, q) => (lower ? Binomial.BetaLower(x + 1.0, failures, p, q) : Binomial.BetaUpper(x, failures + 1.0, p, q))
                + (0.5 * Binomial.Probability(x, n, p, q)),
            (p, q) => 0.5 * Binomial.Probability(x, n, p, q) * ((failures * p) + (x * q)));
    }

    /// <summary>Solves probability(p) = tail in the logit of p; the slope is the derivative in the logit, without sign.</summary>
    private static double Solve(double start, double tail, bool decreasing, Func<double, double, double> probability, Func<double, double, double> slope)
    {
        var low = -745.0;
        var high = 745.0;
        var u = start;
        var target = Math.Log(tail);
        for (var step = 0; step < 200; step++)
        {
            var p = 1 / (1 + Math.Exp(-u));
            var q = 1 / (1 + Math.Exp(u));
            var value = probability(p, q);
            var excess = value > 0 ? Math.Log(value) - target : double.NegativeInfinity;
            if ((excess > 0) == decreasing) low = u;
            else high = u;
            var derivative = slope(p, q) / value;
            var next = u - ((decreasing ? -1 : 1) * excess / derivative);
            if (!(next > low && next < high)) next = low == -745 ? u - 2 : high == 745 ? u + 2 : (low + high) / 2;
            var moved = Math.Abs(next - u);
            u = next;
            if (moved <= 4e-16 * Math.Max(1, Math.Abs(u)) || excess == 0) break;
        }

        return 1 / (1 + Math.Exp(-u));
    }

    private static double Logit(double p) => Math.Log(p / (1 - p));
}
