namespace ScreenStats.Statistics.Numerics;

/// <summary>
/// Functions that lose digits near 0 when written plainly. The runtime's <c>double.LogP1</c> and <c>double.ExpM1</c> are the plain
/// forms: at 1e-9 they are wrong in the eighth digit.
/// </summary>
/// <remarks>Source: Kahan's corrections by the rounding of 1 + x, in Goldberg D, ACM Comput Surv 1991;23:5-48, theorem 4 (from memory).</remarks>
internal static class Precise
{
    /// <summary>ln(1 + x).</summary>
    public static double LogOnePlus(double x)
    {
        var sum = 1 + x;
        return sum == 1 ? x : Math.Log(sum) * (x / (sum - 1));
    }

    /// <summary>e to the x, minus 1.</summary>
    public static double ExponentialMinusOne(double x)
    {
        if (Math.Abs(x) > 1) return Math.Exp(x) - 1;
        var power = Math.Exp(x);
        return power == 1 ? x : (power - 1) * (x / Math.Log(power));
    }
}
