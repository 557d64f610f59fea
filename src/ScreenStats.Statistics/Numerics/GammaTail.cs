namespace ScreenStats.Statistics.Numerics;

/// <summary>Tails and quantiles of the gamma and the chi-square distribution, with small relative error far out and at large shapes.</summary>
/// <remarks>The kernel has no difference of large logarithms (see <see cref="Binomial"/>). Source: series and continued fraction of the incomplete gamma function, DLMF 8.7.1 and 8.9.2 (from memory).</remarks>
internal static class GammaTail
{
    /// <summary>The chance that a gamma variable of this shape and scale 1 stays below x.</summary>
    public static double Lower(double shape, double x) => x <= 0 ? 0 : x < shape + 1 ? Series(shape, x) : 1 - Fraction(shape, x);

    /// <summary>The chance that a gamma variable of this shape and scale 1 exceeds x.</summary>
    public static double Upper(double shape, double x) => x <= 0 ? 1 : x < shape + 1 ? 1 - Series(shape, x) : Fraction(shape, x);

    /// <summary>The chance that a chi-square variable exceeds x.</summary>
    public static double ChiSquareUpper(double degreesOfFreedom, double x) => Upper(degreesOfFreedom / 2, x / 2);

    /// <summary>The value a chi-square variable exceeds with the given chance, in (0, 1).</summary>
    public static double ChiSquareQuantile(double degreesOfFreedom, double tail, bool upperTail) => 2 * Quantile(degreesOfFreedom / 2, tail, upperTail);

    /// <summary>The value of a gamma variable that leaves the given chance, in (0, 1), below it or above it.</summary>
    public static double Quantile(double shape, double tail, bool upperTail)
    {
        var target = Math.Log(tail);
        double low = -745, high = 709;
        var u = Math.Log(shape);
        for (var step = 0; step < 300; step++)
        {
            var x = Math.Exp(u);
            var value = upperTail ? Upper(shape, x) : Lower(shape, x);
            var excess = value > 0 ? Math.Log(value) - target : double.NegativeInfinity;
            if ((excess > 0) == upperTail) low = u;
            else high = u;
            var newton = (upperTail ? -1 : 1) * excess * value / (shape * Kernel(shape, x));
            if (Math.Abs(newton) < 1e-9) return Math.Exp(u - newton);
            var next = u - newton;
            u = next > low && next < high ? next : low == -745 ? u - 2 : high == 709 ? u + 2 : (low + high) / 2;
        }

        return Math.Exp(u);
    }

    /// <summary>x^a e^-x / Γ(a + 1).</summary>
    private static double Kernel(double a, double x) => Math.Exp(-Binomial.StirlingRemainder(a) - Binomial.Deviance(a, x)) / Math.Sqrt(2 * Math.PI * a);

    private static double Series(double a, double x)
    {
        double sum = 1, term = 1;
        for (var n = 1; n < 10_000_000; n++)
        {
            term *= x / (a + n);
            sum += term;
            if (term < 1e-17 * sum) break;
        }

        return Math.Min(1, Kernel(a, x) * sum);
    }

    private static double Fraction(double a, double x)
    {
        const double Tiny = 1e-300;
        var b = x + 1 - a;
        var c = 1 / Tiny;
        var d = 1 / (Math.Abs(b) < Tiny ? Tiny : b);
        var h = d;
        for (var i = 1; i < 10_000_000; i++)
        {
            var an = -i * (i - a);
            b += 2;
            d = (an * d) + b;
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = b + (an / c);
            if (Math.Abs(c) < Tiny) c = Tiny;
            var change = d * c;
            h *= change;
            if (Math.Abs(change - 1) < 1e-16) break;
        }

        return Math.Clamp(Kernel(a, x) * a * h, 0, 1);
    }
}
