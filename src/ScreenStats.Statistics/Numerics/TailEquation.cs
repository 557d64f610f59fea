namespace ScreenStats.Statistics.Numerics;

/// <summary>
/// Solves "this tail has that probability" for the rate, by Newton steps on the logarithm of the tail over the logit of the
/// rate, kept inside a bracket: the relative error does not grow as the rate becomes small.
/// </summary>
internal static class TailEquation
{
    /// <summary>The logit of the rate that leaves the given probability of Beta(a, b) below it, or above it.</summary>
    public static double BetaQuantileLogit(double a, double b, double tail, bool upperTail) => Solve(
        LogitScale.Logit((a + 0.5) / (a + b + 1)),
        tail,
        upperTail,
        (p, q) => upperTail ? Binomial.BetaUpper(a, b, p, q) : Binomial.BetaLower(a, b, p, q),
        (p, q) => Binomial.BetaKernel(a, b, p, q));

    /// <summary>Solves probability(p, 1 - p) = tail for the logit of p.</summary>
    /// <param name="start">A first guess, as a logit.</param>
    /// <param name="tail">The probability sought, in (0, 1).</param>
    /// <param name="decreasing">Whether the probability falls as p rises.</param>
    /// <param name="probability">The probability of the tail at p and 1 - p.</param>
    /// <param name="slope">Its derivative in the logit, without sign.</param>
    public static double Solve(double start, double tail, bool decreasing, Func<double, double, double> probability, Func<double, double, double> slope)
    {
        const double Outermost = 745;
        var low = -Outermost;
        var high = Outermost;
        var u = start;
        var target = Math.Log(tail);
        for (var step = 0; step < 200; step++)
        {
            var p = LogitScale.Fraction(u);
            var q = LogitScale.Fraction(-u);
            var value = probability(p, q);
            var excess = value > 0 ? Math.Log(value) - target : double.NegativeInfinity;
            if ((excess > 0) == decreasing) low = u;
            else high = u;
            var newton = (decreasing ? -1 : 1) * excess * value / slope(p, q);
            var next = u - newton;

            // Newton's error squares with each step: after one this small nothing is left but rounding.
            if (Math.Abs(newton) < 1e-9) return next;
            if (!(next > low && next < high)) next = low == -Outermost ? u - 2 : high == Outermost ? u + 2 : (low + high) / 2;
            u = next;
        }

        return u;
    }
}
