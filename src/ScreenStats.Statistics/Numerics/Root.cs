namespace ScreenStats.Statistics.Numerics;

/// <summary>Roots of functions of one variable that change sign in a bracket.</summary>
internal static class Root
{
    /// <summary>The root between two points at which the function has opposite signs (or is 0).</summary>
    /// <param name="function">The function; any scale, finite in the bracket.</param>
    /// <param name="low">One end of the bracket.</param>
    /// <param name="high">The other end.</param>
    /// <returns>The root, to the last bits of its size or 1e-15, whichever is more.</returns>
    /// <remarks>
    /// Inverse quadratic interpolation with bisection as the safeguard. Source: Brent RP, Algorithms for Minimization without
    /// Derivatives, 1973, chapter 4 (from memory).
    /// </remarks>
    public static double Between(Func<double, double> function, double low, double high)
    {
        var (a, fa) = (low, function(low));
        var (b, fb) = (high, function(high));
        var (c, fc) = (a, fa);
        var before = b - a;
        var last = before;
        for (var step = 0; step < 300; step++)
        {
            if ((fb > 0) == (fc > 0))
            {
                (c, fc) = (a, fa);
                before = last = b - a;
            }

            if (Math.Abs(fc) < Math.Abs(fb)) (a, fa, b, fb, c, fc) = (b, fb, c, fc, b, fb);
            var tolerance = (2 * double.BitIncrement(Math.Abs(b)) - (2 * Math.Abs(b))) + 5e-16;
            var middle = (c - b) / 2;
            if (Math.Abs(middle) <= tolerance || fb == 0) return b;
            if (Math.Abs(before) < tolerance || Math.Abs(fa) <= Math.Abs(fb))
            {
                before = last = middle;
            }
            else
            {
                var next = Interpolated(a, fa, b, fb, c, fc);
                var usable = Math.Abs(next) < Math.Min(1.5 * Math.Abs(middle), 0.5 * Math.Abs(before)) && (next > 0) == (middle > 0);
                (before, last) = usable ? (last, next) : (middle, middle);
            }

            (a, fa) = (b, fb);
            b += Math.Abs(last) > tolerance ? last : Math.CopySign(tolerance, middle);
            fb = function(b);
        }

        return b;
    }

    /// <summary>The step from b to where the curve through the last points crosses 0.</summary>
    private static double Interpolated(double a, double fa, double b, double fb, double c, double fc)
    {
        var s = fb / fa;
        if (a == c) return 2 * ((c - b) / 2) * s / (s - 1);
        var q = fa / fc;
        var r = fb / fc;
        var numerator = s * (((c - b) * q * (q - r)) - ((b - a) * (r - 1)));
        var denominator = (q - 1) * (r - 1) * (s - 1);
        return -numerator / denominator;
    }
}
