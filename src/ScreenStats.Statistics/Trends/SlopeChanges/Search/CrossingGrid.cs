namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>
/// Weighted least squares of a line with two changes, each at a period or between two: every pair of places in a few operations, from sums at hand. Between
/// periods the best place is where the lines of both sides cross, if they do so there (Hudson); so no optimum is missed because it lies between periods.
/// </summary>
internal sealed class CrossingGrid
{
    // Two pairs of which both places lie this near, in half periods, lead to the same optimum.
    private const int Near = 2;
    private readonly LineData data;
    private readonly int least;
    private readonly Sums[] before;
    private readonly End[] left;
    private readonly End[] right;

    public CrossingGrid(LineData data, double[] weights, double[] response, int least)
    {
        (this.data, this.least) = (data, least);
        var count = data.Places.Length;
        before = new Sums[count + 1];
        for (var place = 0; place < count; place++)
        {
            var sums = before[place];
            for (var i = place == 0 ? 0 : data.FirstAfter[place - 1]; i < data.FirstAfter[place]; i++)
            {
                var (w, t, z) = (weights[i], data.Times[i], response[i]);
                sums = new Sums(sums.W + w, sums.T + (w * t), sums.TT + (w * t * t), sums.Z + (w * z), sums.TZ + (w * t * z));
            }

            before[place + 1] = sums;
        }

        // Half periods: an even one is a period, an odd one lies between two.
        (left, right) = (new End[(2 * count) - 1], new End[(2 * count) - 1]);
        for (var at = 0; at < left.Length; at++)
        {
            left[at] = EndOf(at, before[(at + 1) / 2]);
            right[at] = EndOf(at, before[count] - before[(at / 2) + 1]);
        }
    }

    /// <summary>The pairs of places that explain most, the best first, none near a better one.</summary>
    public List<double[]> Pairs(int keep)
    {
        var found = new List<(double Gain, int First, int Second, double[] Knots)>();
        var row = new (double Gain, double[] Knots)[left.Length];
        bool[] closes = [.. Enumerable.Range(0, right.Length).Select(at => data.Admits(Place(at), double.PositiveInfinity, least))];
        for (var first = 0; first < left.Length; first++)
        {
            if (!data.Admits(double.NegativeInfinity, Place(first), least)) continue;
            Array.Fill(row, (double.NegativeInfinity, []));
            var open = false;
            for (var second = first + 1; second < right.Length && closes[second]; second++)
            {
                if (open = open || data.Admits(Place(first), Place(second), least)) row[second] = Pair(first, second);
            }

            for (var second = first + 1; second < right.Length; second++)
            {
                var (gain, knots) = row[second];
                if (knots.Length > 0 && Enumerable.Range(second - Near, (2 * Near) + 1).All(other => other < 0 || other >= row.Length || row[other].Gain <= gain)) found.Add((gain, first, second, knots));
            }
        }

        var kept = new List<(double Gain, int First, int Second, double[] Knots)>();
        foreach (var pair in found.OrderByDescending(pair => pair.Gain).ThenBy(pair => pair.First))
        {
            if (kept.Count == keep) break;
            if (!kept.Exists(better => Math.Abs(better.First - pair.First) <= Near && Math.Abs(better.Second - pair.Second) <= Near)) kept.Add(pair);
        }

        return kept.ConvertAll(pair => pair.Knots);
    }

    /// <summary>What the best line with its changes in two half periods explains, and its changes; none where lines do not cross there.</summary>
    private (double Gain, double[] Knots) Pair(int first, int second)
    {
        // The middle part by its heights at the two places; at a period the outer part hangs on to it, else it is a line of its own.
        var (a, b) = (Place(first), Place(second));
        var span = b - a;
        var sums = before[(second / 2) + 1] - before[(first + 1) / 2];
        var (one, other) = (left[first], right[second]);
        var (fromA, toB) = (sums.T - (a * sums.W), (b * sums.W) - sums.T);
        var cross = ((b * fromA) - (sums.TT - (a * sums.T))) / (span * span);
        var (aa, bb) = ((toB / span) - cross + one.Weight, (fromA / span) - cross + other.Weight);
        var (za, zb) = ((((b * sums.Z) - sums.TZ) / span) + one.Pull, ((sums.TZ - (a * sums.Z)) / span) + other.Pull);
        var determinant = (aa * bb) - (cross * cross);
        if (!(determinant > 1e-10 * aa * bb)) return (double.NegativeInfinity, []);
        var (atA, atB) = (((bb * za) - (cross * zb)) / determinant, ((aa * zb) - (cross * za)) / determinant);
        var gain = (atA * za) + (atB * zb) + one.Gain + other.Gain;
        var slope = (atB - atA) / span;
        var knots = new[] { Crossing(first, one, a, atA, slope), Crossing(second, other, b, atB, slope) };
        return double.IsFinite(gain) && Array.TrueForAll(knots, double.IsFinite) ? (gain, knots) : (double.NegativeInfinity, []);
    }

    private double Crossing(int at, End end, double place, double height, double slope)
    {
        if (at % 2 == 0) return place;
        var crossing = place + ((end.Height - height) / (slope - end.Slope));
        return crossing > data.Places[at / 2] && crossing < data.Places[(at / 2) + 1] ? crossing : double.NaN;
    }

    private double Place(int at) => at % 2 == 0 ? data.Places[at / 2] : (data.Places[at / 2] / 2) + (data.Places[(at / 2) + 1] / 2);

    private End EndOf(int at, Sums sums)
    {
        var place = Place(at);
        var (t, tz) = (sums.T - (place * sums.W), sums.TZ - (place * sums.Z));
        var tt = sums.TT - (2 * place * sums.T) + (place * place * sums.W);
        var (weight, pull, gain) = (sums.W - (t * t / tt), sums.Z - (t * tz / tt), tz * tz / tt);
        if (at % 2 == 0) return new End(weight, pull, gain, 0, 0);
        var height = pull / weight;
        return new End(0, 0, gain + (pull * height), height, (tz - (t * height)) / tt);
    }

    /// <summary>Sums over periods of weights times powers of time and response.</summary>
    private readonly record struct Sums(double W, double T, double TT, double Z, double TZ)
    {
        public static Sums operator -(Sums a, Sums b) => new(a.W - b.W, a.T - b.T, a.TT - b.TT, a.Z - b.Z, a.TZ - b.TZ);
    }

    /// <summary>The outer part beyond a place: what its periods add to the equation of the height there and explain by their slope; between periods the line of its own.</summary>
    private readonly record struct End(double Weight, double Pull, double Gain, double Height, double Slope);
}
