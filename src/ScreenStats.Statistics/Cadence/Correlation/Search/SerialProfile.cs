using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Correlation.Search;

/// <summary>The greatest likelihood at each correlation.</summary>
internal sealed class SerialProfile
{
    private readonly SerialSearch search;
    private readonly (double Correlation, double Height, double[] Parameters)[] points;

    /// <summary>Climbs at each correlation of a grid from each start, and from there to the next: there may be more than one hill.</summary>
    public SerialProfile(SerialSearch search, IEnumerable<double[]> starts, double[] grid)
    {
        this.search = search;
        points = [.. starts.SelectMany(start => Chain(start, grid)).GroupBy(point => point.Correlation).Select(hills => hills.MaxBy(point => point.Height))];
    }

    /// <summary>The profile at a correlation, from the nearest point of the grid.</summary>
    public (double Height, double[] Parameters) At(double correlation)
    {
        var nearest = points.MinBy(point => Math.Abs(point.Correlation - correlation));
        if (nearest.Correlation == correlation) return (nearest.Height, nearest.Parameters);
        var parameters = (double[])nearest.Parameters.Clone();
        return (search.Climb(correlation, parameters), parameters);
    }

    /// <summary>The correlation of the greatest likelihood, by golden sections around the best point of the grid.</summary>
    public (double Correlation, double Height, double[] Parameters) Best()
    {
        var top = Enumerable.Range(0, points.Length).MaxBy(i => points[i].Height);
        var (low, high) = (points[Math.Max(top - 1, 0)].Correlation, points[Math.Min(top + 1, points.Length - 1)].Correlation);
        const double Part = 0.381966011250105;
        var (a, b) = (low + (Part * (high - low)), high - (Part * (high - low)));
        var (atA, atB) = (At(a).Height, At(b).Height);
        while (high - low > 1e-5)
        {
            if (atA >= atB)
            {
                (high, b, atB) = (b, a, atA);
                a = low + (Part * (high - low));
                atA = At(a).Height;
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = high - (Part * (high - low));
                atB = At(b).Height;
            }
        }

        var middle = (low + high) / 2;
        var found = At(middle);
        return found.Height > points[top].Height ? (middle, found.Height, found.Parameters) : points[top];
    }

    /// <summary>Where the profile has fallen by so much on either side, outermost; the ends of the grid where it has not.</summary>
    public Interval Limits(double best, double height, double fall)
    {
        double Excess(double correlation) => At(correlation).Height - height + fall;
        var lower = Array.FindIndex(points, point => point.Height > height - fall);
        var upper = Array.FindLastIndex(points, point => point.Height > height - fall);
        var (above, below) = (lower < 0 ? best : points[lower].Correlation, upper < 0 ? best : points[upper].Correlation);
        (above, below) = (Math.Min(above, best), Math.Max(below, best));
        return new Interval(Edge(Excess, points.LastOrDefault(point => point.Correlation < above, points[0]).Correlation, above), Edge(Excess, points.FirstOrDefault(point => point.Correlation > below, points[^1]).Correlation, below));
    }

    private IEnumerable<(double Correlation, double Height, double[] Parameters)> Chain(double[] start, double[] grid)
    {
        var parameters = start;
        foreach (var correlation in grid)
        {
            parameters = (double[])parameters.Clone();
            yield return (correlation, search.Climb(correlation, parameters), parameters);
        }
    }

    /// <summary>The root between a point outside and one inside; the one inside where there is nothing outside.</summary>
    private static double Edge(Func<double, double> excess, double outside, double inside)
    {
        if (outside == inside || excess(outside) >= 0) return outside;
        for (var step = 0; step < 22; step++)
        {
            var middle = (outside + inside) / 2;
            if (excess(middle) > 0) inside = middle;
            else outside = middle;
        }

        return (outside + inside) / 2;
    }
}
