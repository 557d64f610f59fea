namespace ScreenStats.Statistics.Numerics;

/// <summary>Logarithms of the gamma function and what is made of them, from Stirling's formula with its remainder.</summary>
internal static class GammaLogarithm
{
    private const double HalfLogTwoPi = 0.91893853320467274178;

    /// <summary>ln Γ(z) for z above 0; absolute error a few units of the last digit of the largest term.</summary>
    public static double Of(double z) =>
        z < 1 ? Of(z + 1) - Math.Log(z) : ((z + 0.5) * Math.Log(z)) - z + HalfLogTwoPi + Binomial.StirlingRemainder(z) - Math.Log(z);

    /// <summary>ln C(n, k) for each k from 0 to n.</summary>
    public static double[] Choices(long n)
    {
        var all = Factorials(n);
        var choices = new double[n + 1];
        for (long k = 0; k <= n; k++) choices[k] = all[n] - all[k] - all[n - k];
        return choices;
    }

    /// <summary>ln Γ(start + k) for each k from 0 to n.</summary>
    public static double[] Rising(double start, long n)
    {
        var values = new double[n + 1];
        for (long k = 0; k <= n; k++) values[k] = Of(start + k);
        return values;
    }

    private static double[] Factorials(long n) => Rising(1, n);
}
