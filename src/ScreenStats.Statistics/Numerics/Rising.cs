namespace ScreenStats.Statistics.Numerics;

/// <summary>
/// Sums over a, a + 1, … a + n - 1, that is differences of the gamma function's logarithm and its derivatives, without cancellation where a is large
/// or n is small: term by term below 16, by Stirling's series with its differences taken before summing above.
/// </summary>
internal static class Rising
{
    private const double Direct = 16;

    /// <summary>The sum of ln(a + j).</summary>
    public static double Logarithms(double a, long n)
    {
        double sum = 0;
        var left = n;
        while (left > 0 && (a < Direct || left <= 8))
        {
            sum += Math.Log(a);
            a += 1;
            left--;
        }

        return left == 0 ? sum : sum + ((a - 0.5) * Precise.LogOnePlus(left / a)) + (left * Math.Log(a + left)) - left
            + Binomial.StirlingRemainder(a + left) - Binomial.StirlingRemainder(a);
    }

    /// <summary>The sum of 1 / (a + j).</summary>
    public static double Reciprocals(double a, long n)
    {
        double sum = 0;
        var left = n;
        while (left > 0 && (a < Direct || left <= 8))
        {
            sum += 1 / a;
            a += 1;
            left--;
        }

        return left == 0 ? sum : sum + Precise.LogOnePlus(left / a) + Correction(a) - Correction(a + left);
    }

    /// <summary>The sum of j / (a + j).</summary>
    public static double Shares(double a, long n)
    {
        double sum = 0;
        long j = 0;
        while (j < n && (a + j < Direct || n - j <= 8))
        {
            sum += j / (a + j);
            j++;
        }

        if (j == n) return sum;

        // What is left of j / (a + j) = 1 - a / (a + j), with b = a + j: n - a (ln(1 + n / b) + …), x - ln(1 + x) taken as one.
        var b = a + j;
        var left = n - j;
        var x = left / b;
        return sum + (b * Excess(x)) + (j * Precise.LogOnePlus(x)) - (a * (Correction(b) - Correction(b + left)));
    }

    /// <summary>The sum of 1 / (a + j)².</summary>
    public static double Squares(double a, long n)
    {
        double sum = 0;
        var left = n;
        while (left > 0 && (a < Direct || left <= 8))
        {
            sum += 1 / (a * a);
            a += 1;
            left--;
        }

        return left == 0 ? sum : sum + Trigamma(a) - Trigamma(a + left);
    }

    /// <summary>x - ln(1 + x).</summary>
    private static double Excess(double x)
    {
        if (x > 0.05) return x - Precise.LogOnePlus(x);
        double sum = 0, power = x;
        for (var k = 2; k < 16; k++)
        {
            power *= -x;
            sum -= power / k;
        }

        return sum;
    }

    /// <summary>ln(a) minus the digamma function, for a of 16 and more.</summary>
    private static double Correction(double a)
    {
        var r = 1 / (a * a);
        return (0.5 / a) + (((1.0 / 12) - (((1.0 / 120) - (((1.0 / 252) - (((1.0 / 240) - (r / 132)) * r)) * r)) * r)) * r);
    }

    private static double Trigamma(double a)
    {
        var r = 1 / (a * a);
        return (1 / a) + (r / 2) + (((1.0 / 6) - (((1.0 / 30) - (((1.0 / 42) - (r / 30)) * r)) * r)) * r / a);
    }
}
