namespace ScreenStats.Statistics.Proportions;

/// <summary>Wilson's quadratic, written so that neither end cancels.</summary>
internal static class ScoreInterval
{
    public static Interval Wilson(double x, double n, double z) =>
        new(x <= 0 ? 0 : LowerRoot(x, n, z), x >= n ? 1 : UpperRoot(x, n, z));

    public static Interval WilsonContinuity(double x, double n, double z) =>
        new(x <= 0.5 ? 0 : LowerRoot(x - 0.5, n, z), x + 0.5 >= n ? 1 : UpperRoot(x + 0.5, n, z)); // half an event is none, corrected

    public static Interval AgrestiCoull(double x, double n, double z)
    {
        var trials = n + (z * z);
        var centre = (x + (z * z / 2)) / trials;
        var half = z * Math.Sqrt(centre * (1 - centre) / trials);
        return new Interval(Math.Max(0, centre - half), Math.Min(1, centre + half));
    }

    // (h - nL)^2 = z^2 n L (1 - L): the product of the roots gives the small one without a difference.
    private static double LowerRoot(double h, double n, double z) => 2 * h * h / n / Sum(h, n, z);

    private static double UpperRoot(double h, double n, double z) => Math.Min(1, Sum(h, n, z) / (2 * (n + (z * z))));

    private static double Sum(double h, double n, double z) =>
        (2 * h) + (z * z) + (z * Math.Sqrt((z * z) + (4 * h * (1 - (h / n)))));
}
