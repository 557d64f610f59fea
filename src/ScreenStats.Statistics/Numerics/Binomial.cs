namespace ScreenStats.Statistics.Numerics;

/// <summary>
/// Binomial and beta probabilities with small relative error at large counts and small rates.
/// </summary>
/// <remarks>
/// Differences of logarithms of gamma functions lose eight digits at ten million trials. The saddle-point form has no such
/// difference: the Stirling remainder and the deviance are each computed small.
/// Source: Loader C, "Fast and accurate computation of binomial probabilities", 2000 (from memory).
/// </remarks>
internal static class Binomial
{
    /// <summary>ln Gamma(z + 1) minus Stirling's (z + 1/2) ln z - z + ln(2 pi) / 2, for z above 0.</summary>
    public static double StirlingRemainder(double z)
    {
        if (z >= 16) return StirlingSeries(z);
        double product = 1;
        var w = z;
        while (w < 16)
        {
            w += 1;
            product *= w;
        }

        // ln Gamma(w + 1) - ln(product of z+1 .. w) - Stirling(z)
        return StirlingSeries(w) + ((w + 0.5) * Math.Log(w)) - w - Math.Log(product) - ((z + 0.5) * Math.Log(z)) + z;
    }

    /// <summary>x ln(x / m) + m - x, computed without cancellation where x is near m.</summary>
    public static double Deviance(double x, double m)
    {
        if (x == 0) return m;
        var difference = x - m;
        if (Math.Abs(difference) < 0.1 * (x + m))
        {
            var v = difference / (x + m);
            var sum = difference * v;
            var term = 2 * x * v;
            var square = v * v;
            for (var j = 1; j < 200; j++)
            {
                term *= square;
                var next = sum + (term / ((2 * j) + 1));
                if (next == sum) break;
                sum = next;
            }

            return sum;
        }

        return (x * Math.Log(x / m)) + m - x;
    }

    /// <summary>The chance of exactly <paramref name="x"/> of <paramref name="n"/> (real numbers allowed), q = 1 - p given apart.</summary>
    public static double Probability(double x, double n, double p, double q)
    {
        if (p == 0) return x == 0 ? 1 : 0;
        if (q == 0) return x == n ? 1 : 0;
        if (x == 0) return p < 0.1 ? Math.Exp(n * Precise.LogOnePlus(-p)) : Math.Exp(n * Math.Log(q));
        if (x == n) return q < 0.1 ? Math.Exp(n * Precise.LogOnePlus(-q)) : Math.Exp(n * Math.Log(p));
        var exponent = StirlingRemainder(n) - StirlingRemainder(x) - StirlingRemainder(n - x)
            - Deviance(x, n * p) - Deviance(n - x, n * q);
        return Math.Exp(exponent) * Math.Sqrt(n / (2 * Math.PI * x * (n - x)));
    }

    /// <summary>Lower tail of the beta distribution at x (y = 1 - x given apart): the regularized incomplete beta function.</summary>
    public static double BetaLower(double a, double b, double x, double y)
    {
        if (x <= 0) return 0;
        if (y <= 0) return 1;
        return x <= (a + 1) / (a + b + 2) ? BetaSmallSide(a, b, x, y) : 1 - BetaSmallSide(b, a, y, x);
    }

    /// <summary>Upper tail of the beta distribution at x (y = 1 - x given apart).</summary>
    public static double BetaUpper(double a, double b, double x, double y) => BetaLower(b, a, y, x);

    /// <summary>x^a y^b / B(a, b).</summary>
    public static double BetaKernel(double a, double b, double x, double y)
    {
        var n = a + b;
        var exponent = StirlingRemainder(n) - StirlingRemainder(a) - StirlingRemainder(b) - Deviance(a, n * x) - Deviance(b, n * y);
        return Math.Sqrt(a * b / (2 * Math.PI * n)) * Math.Exp(exponent);
    }

    private static double BetaSmallSide(double a, double b, double x, double y) =>
        BetaKernel(a, b, x, y) / a * ContinuedFraction(a, b, x);

    /// <summary>The continued fraction of the incomplete beta function by the modified Lentz method.</summary>
    private static double ContinuedFraction(double a, double b, double x)
    {
        const double Tiny = 1e-300;
        const int Limit = 2_000_000;
        double c = 1;
        var d = 1 - ((a + b) * x / (a + 1));
        if (Math.Abs(d) < Tiny) d = Tiny;
        d = 1 / d;
        var h = d;
        for (var m = 1; m < Limit; m++)
        {
            var even = m * (b - m) * x / ((a + (2.0 * m) - 1) * (a + (2.0 * m)));
            d = 1 + (even * d);
            if (Math.Abs(d) < Tiny) d = Tiny;
            c = 1 + (even / c);
            if (Math.Abs(c) < Tiny) c = Tiny;
            d = 1 / d;
            h *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2.0 * m)) * (a + (2.0 * m) + 1));
            d = 1 + (odd * d);
            if (Math.Abs(d) < Tiny) d = Tiny;
            c = 1 + (odd / c);
            if (Math.Abs(c) < Tiny) c = Tiny;
            d = 1 / d;
            var change = d * c;
            h *= change;
            if (Math.Abs(change - 1) < 1e-16) break;
        }

        return h;
    }

    private static double StirlingSeries(double z)
    {
        var r = 1 / (z * z);
        return ((1.0 / 12) - (((1.0 / 360) - (((1.0 / 1260) - (((1.0 / 1680) - (((1.0 / 1188) - (691.0 / 360360 * r)) * r)) * r)) * r)) * r)) / z;
    }
}
