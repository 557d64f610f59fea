using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Proportions;

/// <summary>Limits that leave a given tail and solve its equation (see <see cref="TailEquation"/>); closed forms where nothing or everything was seen.</summary>
internal static class ExactInterval
{
    public static Interval ClopperPearson(double x, double n, double tail)
    {
        var failures = n - x;
        var lower = x == 0 ? 0 : failures == 0 ? Math.Exp(Math.Log(tail) / n) : BetaQuantile(x, failures + 1, tail, upperTail: false);
        var upper = failures == 0 ? 1 : x == 0 ? -Precise.ExponentialMinusOne(Math.Log(tail) / n) : BetaQuantile(x + 1, failures, tail, upperTail: true);
        return new Interval(lower, upper);
    }

    public static Interval Jeffreys(double x, double n, double tail)
    {
        var a = x + 0.5;
        var b = n - x + 0.5;
        return new Interval(
            x == 0 ? 0 : BetaQuantile(a, b, tail, upperTail: false),
            x == n ? 1 : BetaQuantile(a, b, tail, upperTail: true));
    }

    public static Interval MidP(double x, double n, double tail)
    {
        var lower = x == 0 ? 0 : x == n ? Math.Exp(Math.Log(2 * tail) / n) : MidPLimit(x, n, tail, lower: true);
        var upper = x == n ? 1 : x == 0 ? -Precise.ExponentialMinusOne(Math.Log(2 * tail) / n) : MidPLimit(x, n, tail, lower: false);
        return new Interval(lower, upper);
    }

    private static double BetaQuantile(double a, double b, double tail, bool upperTail) =>
        LogitScale.Fraction(TailEquation.BetaQuantileLogit(a, b, tail, upperTail));

    private static double MidPLimit(double x, double n, double tail, bool lower)
    {
        var failures = n - x;
        var logit = TailEquation.Solve(
            LogitScale.Logit((x + 0.5) / (n + 1)),
            tail,
            !lower,
            (p, q) => (lower ? Binomial.BetaLower(x + 1, failures, p, q) : Binomial.BetaUpper(x, failures + 1, p, q))
                + (0.5 * Binomial.Probability(x, n, p, q)),
            (p, q) => 0.5 * Binomial.Probability(x, n, p, q) * ((failures * p) + (x * q)));
        return LogitScale.Fraction(logit);
    }
}
