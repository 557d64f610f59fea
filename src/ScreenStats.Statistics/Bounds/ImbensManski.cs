using MathNet.Numerics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Bounds;

/// <summary>Confidence intervals for a figure known only to lie between two bounds, each estimated with error.</summary>
public static class ImbensManski
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "imbens-manski";

    /// <summary>The critical value: one-sided where the bounds are far apart, two-sided where they meet.</summary>
    /// <param name="width">Upper minus lower bound, 0 or more.</param>
    /// <param name="standardError">The larger of the two bounds' standard errors, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <returns>The C with Φ(C + width/standardError) - Φ(-C) = confidence; the one-sided quantile where the standard error is 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>Source: Imbens GW, Manski CF, Econometrica 2004;72:1845-1857, equation 7 (number from memory).</remarks>
    public static double CriticalValue(double width, double standardError, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (!(width >= 0) || !double.IsFinite(width)) throw new ArgumentOutOfRangeException(nameof(width), width, "The width must be a finite number, 0 or more.");
        if (!(standardError >= 0) || !double.IsFinite(standardError))
            throw new ArgumentOutOfRangeException(nameof(standardError), standardError, "The standard error must be a finite number, 0 or more.");
        var apart = standardError == 0 ? double.PositiveInfinity : width / standardError;
        var high = Quantile.Normal(confidence);
        if (apart == 0) return high;
        double low = -40;
        for (var step = 0; step < 200 && high - low > 0; step++)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high) break;
            // Outside: the tail above the shifted C, and the tail below -C.
            var outside = (double.IsPositiveInfinity(apart) ? 0 : Tail(middle + apart)) + Tail(middle);
            if (outside > 1 - confidence) low = middle;
            else high = middle;
        }

        return high;
    }

    private static double Tail(double z) => 0.5 * SpecialFunctions.Erfc(z / Math.Sqrt(2));
}
