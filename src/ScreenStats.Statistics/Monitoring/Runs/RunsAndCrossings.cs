namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>Whether values shift or drift, from runs about their median alone: no limits, no distribution.</summary>
public static class RunsAndCrossings
{
    /// <summary>The most useful points whose chances are computed.</summary>
    public const int MostPoints = 5000;

    /// <summary>Counts runs and crossings about the median, or about a given centre.</summary>
    /// <param name="values">The values in order, finite. Leave out points without a value.</param>
    /// <param name="centre">A centre known beforehand, finite; null takes the median of the values.</param>
    /// <returns>The longest run and the crossings, with their limits and chances.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value or the centre is not finite.</exception>
    /// <remarks>
    /// <para>
    /// Points on the centre are dropped; n useful ones remain. A signal is a longest run above round(log₂ n + 3), or fewer crossings than the
    /// 0.05 quantile of Binomial(n - 1, 1/2). Above means strictly above, as published: for 13 useful points a run of eight, fewer than three
    /// crossings. (A popular account of the method by the same group has "at least seven" there.) Halves are rounded to the even number.
    /// </para>
    /// <para>
    /// The chances take each point to lie on either side with chance 1/2. Where many values tie with their median the sides are uneven and signals
    /// come more often; where all useful points lie on one side of their own median, as when most are 0, nothing can be said.
    /// Source: Anhoj J, Olesen AV, PLoS ONE 2014;9(11):e113825 (limits from memory).
    /// </para>
    /// </remarks>
    public static RunsAndCrossingsFinding Of(IEnumerable<double> values, double? centre = null)
    {
        double[] points = [.. values];
        foreach (var value in points) Guard.Finite(value, nameof(values));
        if (centre is { } given) Guard.Finite(given, nameof(centre));
        if (points.Length == 0) return new RunsAndCrossingsFinding { Reason = UndefinedReason.NoPoints };
        var middle = centre ?? Median(points);
        bool[] above = [.. points.Where(value => value != middle).Select(value => value > middle)];
        var counted = new RunsAndCrossingsFinding { Points = points.Length, Centre = middle, Useful = above.Length, Above = above.Count(side => side) };
        UndefinedReason? reason = points.Length == 1 ? UndefinedReason.FewerThanTwoPoints
            : above.Length < 2 ? UndefinedReason.PointsOnTheMedian
            : centre is null && (counted.Above == 0 || counted.Above == above.Length) ? UndefinedReason.PointsOnOneSideOfTheMedian
            : null;
        if (reason is not null) return counted with { Reason = reason };
        var (run, longest, crossings) = (1, 1, 0);
        for (var i = 1; i < above.Length; i++)
        {
            run = above[i] == above[i - 1] ? run + 1 : 1;
            if (run == 1) crossings++;
            longest = Math.Max(longest, run);
        }

        var limits = Chances(Math.Min(above.Length, MostPoints));
        return counted with
        {
            LongestRun = longest,
            Crossings = crossings,
            LongestRunLimit = LongestRunLimit(above.Length),
            CrossingsLimit = CrossingsLimit(above.Length),
            Chances = above.Length <= MostPoints ? limits : null,
        };
    }

    /// <summary>The chances of a false signal.</summary>
    /// <param name="usefulPoints">The points off the centre, 1 to <see cref="MostPoints"/>.</param>
    /// <returns>The limits with the chance that either, and that any, is passed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number of points is outside its domain.</exception>
    /// <remarks>Exact, by dynamic programming over the lengths of the runs: 4 to 8 % from 10 to 100 points (0.045 at 10, 0.079 at 40), 12 % at 5000.</remarks>
    public static RunChances Chances(int usefulPoints)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(usefulPoints, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(usefulPoints, MostPoints);
        var longest = LongestRunLimit(usefulPoints);
        var fewest = CrossingsLimit(usefulPoints);
        var byCrossings = WithoutLongRun(usefulPoints, longest);
        double noLongRun = 0, neither = 0;
        for (var crossings = usefulPoints - 1; crossings >= 0; crossings--)
        {
            noLongRun += byCrossings[crossings];
            if (crossings >= fewest) neither += byCrossings[crossings];
        }

        var few = fewest == 0 ? 0 : Charts.CountLimits.BinomialOrLess(fewest - 1, usefulPoints - 1, 0.5);
        return new RunChances(usefulPoints, longest, fewest, Math.Clamp(1 - noLongRun, 0, 1), few, Math.Clamp(1 - neither, 0, 1));
    }

    /// <summary>The longest run that is no signal.</summary>
    internal static int LongestRunLimit(int usefulPoints) => (int)Math.Round(Math.Log2(usefulPoints) + 3, MidpointRounding.ToEven);

    /// <summary>The fewest crossings that are no signal.</summary>
    internal static int CrossingsLimit(int usefulPoints) =>
        (int)Charts.CountLimits.First(0, usefulPoints - 1, x => Charts.CountLimits.BinomialOrLess(x, usefulPoints - 1, 0.5) >= 0.05);

    /// <summary>The chance, by number of crossings, that no run of fair coins is longer than the limit.</summary>
    private static double[] WithoutLongRun(int points, int longest)
    {
        var result = new double[points];
        var previous = new double[points + 1];
        var current = new double[points + 1];

        // Chance that the first m points make up exactly k runs, none too long, the side of the first one fixed.
        previous[0] = 1;
        for (var runs = 1; runs <= points; runs++)
        {
            Array.Clear(current);
            for (var m = runs; m <= points; m++)
            {
                double sum = 0;
                for (var (length, weight) = (1, 0.5); length <= longest && length <= m; length++, weight /= 2) sum += weight * previous[m - length];
                current[m] = sum;
            }

            result[runs - 1] = 2 * current[points];
            (previous, current) = (current, previous);
        }

        return result;
    }

    private static double Median(double[] values)
    {
        var sorted = values.Order().ToArray();
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : sorted[half - 1] + ((sorted[half] - sorted[half - 1]) / 2);
    }
}
