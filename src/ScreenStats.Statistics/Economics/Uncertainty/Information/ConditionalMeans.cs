namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>The mean of something given a parameter: its projection on smooth functions of the parameter, or on its groups of equal values.</summary>
internal sealed class ConditionalMeans
{
    private const int FewValues = 10;

    private static readonly double[] KnotQuantiles = [0.025, 0.1833, 0.3417, 0.5, 0.6583, 0.8167, 0.975];

    private readonly List<double[]> basis;
    private readonly int[]? groups;

    private ConditionalMeans(List<double[]> basis, int[]? groups)
    {
        this.basis = basis;
        this.groups = groups;
    }

    /// <summary>Whether the parameter has few values, so that means within them are taken.</summary>
    public bool Grouped => groups is not null;

    public static ConditionalMeans Given(IReadOnlyList<double> parameter)
    {
        double[] sorted = [.. parameter.Order()];
        double[] distinct = [.. sorted.Distinct().Take(FewValues + 1)];
        if (distinct.Length <= FewValues) return new ConditionalMeans([], [.. parameter.Select(value => Array.BinarySearch(distinct, value))]);

        // Scaled to the spread within the middle 95 %, so that powers stay within bounds for most of the draws.
        double At(double share) => sorted[(int)Math.Round(share * (sorted.Length - 1))];
        var (middle, spread) = (At(0.5), At(0.975) - At(0.025));
        if (!(spread > 0)) spread = sorted[^1] - sorted[0];
        double[] scaled = [.. parameter.Select(value => (value - middle) / spread)];
        double[] knots = [.. KnotQuantiles.Select(share => (At(share) - middle) / spread).Distinct()];
        return new ConditionalMeans(Orthonormal(Columns(scaled, knots)), null);
    }

    /// <summary>The fitted values.</summary>
    public double[] Of(double[] values)
    {
        if (groups is not null)
        {
            var sums = new double[FewValues];
            var counts = new int[FewValues];
            for (var i = 0; i < values.Length; i++)
            {
                sums[groups[i]] += values[i];
                counts[groups[i]]++;
            }

            return [.. groups.Select(group => sums[group] / counts[group])];
        }

        // Around the mean, which keeps the digits of a small variation.
        var mean = values.Average();
        var rest = values.Select(value => value - mean).ToArray();
        var fitted = new double[values.Length];
        Array.Fill(fitted, mean);
        foreach (var column in basis)
        {
            var weight = Product(column, rest);
            for (var i = 0; i < rest.Length; i++)
            {
                rest[i] -= weight * column[i];
                fitted[i] += weight * column[i];
            }
        }

        return fitted;
    }

    /// <summary>1, x and the restricted cubic terms, which are straight beyond the outer knots.</summary>
    private static IEnumerable<double[]> Columns(double[] x, double[] knots)
    {
        yield return [.. x.Select(_ => 1.0)];
        yield return x;
        for (var k = 0; k + 2 < knots.Length; k++)
        {
            var knot = knots[k];
            double Cubed(double value, double from) => value > from ? (value - from) * (value - from) * (value - from) : 0;
            var (last, before) = (knots[^1], knots[^2]);
            yield return
            [
                .. x.Select(value => Cubed(value, knot) - (Cubed(value, before) * (last - knot) / (last - before)) + (Cubed(value, last) * (before - knot) / (last - before))),
            ];
        }
    }

    /// <summary>Columns made orthogonal and of length 1, twice over; what nothing is left of is dropped.</summary>
    private static List<double[]> Orthonormal(IEnumerable<double[]> columns)
    {
        var kept = new List<double[]>();
        foreach (var given in columns)
        {
            double[] column = [.. given];
            var length = Math.Sqrt(Product(column, column));
            if (length == 0) continue;
            for (var turn = 0; turn < 2; turn++)
            {
                foreach (var other in kept)
                {
                    var weight = Product(other, column);
                    for (var i = 0; i < column.Length; i++) column[i] -= weight * other[i];
                }
            }

            var left = Math.Sqrt(Product(column, column));
            if (left <= 1e-9 * length) continue;
            for (var i = 0; i < column.Length; i++) column[i] /= left;
            kept.Add(column);
        }

        return kept;
    }

    private static double Product(double[] first, double[] second)
    {
        double sum = 0;
        for (var i = 0; i < first.Length; i++) sum += first[i] * second[i];
        return sum;
    }
}
