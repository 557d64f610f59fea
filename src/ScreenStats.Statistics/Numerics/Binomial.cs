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

    /// <summary>The logarithm of <see cref="Probability"/>, for p strictly between 0 and 1: finite where the probability itself is not.</summary>
    public static double LogProbability(double x, double n, double p, double q)
    {
        if (x == 0) return n * (p < 0.1 ? Precise.LogOnePlus(-p) : Math.Log(q));
        if (x == n) return n * (q < 0.1 ? Precise.LogOnePlus(-q) : Math.Log(p));
        return StirlingRemainder(n) - StirlingRemainder(x) - StirlingRemainder(n - x)
            - Deviance(x, n * p) - Deviance(n - x, n * q) - (0.5 * Math.Log(2 * Math.PI * (x / n) * (n - x)));
    }

    /// <summary>Lower tail of the beta distribution at x (y = 1 - x given apart): the regularized incomplete beta function.</summary>
    public static double BetaLower(double a, double b, double x, double y)
    {
        if (x <= 0) return 0;
        if (y <= 0) return 1;
        return (a * y) - (b * x) >= 0 ? BetaSmallSide(a, b, x, y) : 1 - BetaSmallSide(b, a, y, x);
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

    /// <summary>
    /// The continued fraction in the distance a y - b x from the mean, which has no difference of nearly equal numbers where x or y
    /// is small. Source: DiDonato AR, Morris AH, ACM Trans Math Softw 1992;18:360-373, equation 9 (from memory).
    /// </summary>
    private static double BetaSmallSide(double a, double b, double x, double y)
    {
        const int Limit = 2_000_000;
        var c = 1 + ((a * y) - (b * x));
        var ratio = b / a;
        var first = 1 + (1 / a);
        double p = 1, an = 0, bn = 1, anNext = 1;
        var s = a + 1;
        var bnNext = c / first;
        var r = first / c;
        for (var n = 1; n < Limit; n++)
        {
            var t = n / a;
            var w = n * (b - n) * x;
            var e = a / s;
            var alpha = p * (p + ratio) * e * e * (w * x);
            e = (1 + t) / (first + t + t);
            var beta = n + (w / s) + (e * (c + (n * (1 + y))));
            p = 1 + t;
            s += 2;
            (an, anNext) = (anNext, (alpha * an) + (beta * anNext));
            (bn, bnNext) = (bnNext, (alpha * bn) + (beta * bnNext));
            var before = r;
            r = anNext / bnNext;
            if (Math.Abs(r - before) <= 2e-16 * r) break;
            an /= bnNext;
            bn /= bnNext;
            anNext = r;
            bnNext = 1;
        }

        return BetaKernel(a, b, x, y) * r;
    }

    private static double StirlingSeries(double z)
    {
        var r = 1 / (z * z);
        return ((1.0 / 12) - (((1.0 / 360) - (((1.0 / 1260) - (((1.0 / 1680) - (((1.0 / 1188) - (691.0 / 360360 * r)) * r)) * r)) * r)) * r)) / z;
    }
}
