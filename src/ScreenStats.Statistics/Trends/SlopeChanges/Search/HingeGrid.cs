using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>
/// Weighted least squares of a line with changes at periods: how much of the squares each set of places explains beyond a straight line. The products of
/// all hinges are computed once; a new response costs one pass over the periods and a search over numbers that are at hand.
/// </summary>
internal sealed class HingeGrid
{
    private const double Independent = 1e-9;
    private readonly LineData data;
    private readonly double[] weights;
    private readonly int[] places;
    private readonly double[] lengths;
    private readonly double[] products;
    private readonly double[] inverses;
    private readonly double weight;
    private readonly double mean;
    private readonly double spread;

    public HingeGrid(LineData data, double[] weights, int least)
    {
        (this.data, this.weights) = (data, weights);
        places = [.. Enumerable.Range(0, data.Places.Length).Where(i => data.Admits([data.Places[i]], least))];
        Count = places.Length;
        for (var i = 0; i < weights.Length; i++) (weight, mean) = (weight + weights[i], mean + (weights[i] * data.Times[i]));
        mean /= weight;
        for (var i = 0; i < weights.Length; i++) spread += weights[i] * (data.Times[i] - mean) * (data.Times[i] - mean);

        // Sums over the rows after each place, of weights times powers of time.
        var (s0, s1, s2) = (new double[weights.Length + 1], new double[weights.Length + 1], new double[weights.Length + 1]);
        for (var i = weights.Length - 1; i >= 0; i--)
        {
            var t = data.Times[i];
            (s0[i], s1[i], s2[i]) = (s0[i + 1] + weights[i], s1[i + 1] + (weights[i] * t), s2[i + 1] + (weights[i] * t * t));
        }

        var (level, slope) = (new double[Count], new double[Count]);
        for (var j = 0; j < Count; j++)
        {
            var (from, c) = (data.FirstAfter[places[j]], data.Places[places[j]]);
            level[j] = (s1[from] - (c * s0[from])) / Math.Sqrt(weight);
            slope[j] = (s2[from] - ((c + mean) * s1[from]) + (c * mean * s0[from])) / Math.Sqrt(spread);
        }

        (products, inverses, lengths) = (new double[Count * Count], new double[Count * Count], new double[Count]);
        for (var pass = 0; pass < 2; pass++)
        {
            for (var j = 0; j < Count; j++)
            {
                var (from, c) = (data.FirstAfter[places[j]], data.Places[places[j]]);
                for (var i = pass == 0 ? j : 0; i <= j; i++)
                {
                    var b = data.Places[places[i]];
                    var product = s2[from] - ((b + c) * s1[from]) + (b * c * s0[from]) - (level[i] * level[j]) - (slope[i] * slope[j]);
                    if (pass == 0) lengths[j] = Math.Sqrt(Math.Max(0, product));
                    else if (lengths[i] > 0 && lengths[j] > 0) Keep(i, j, i == j ? 1 : product / (lengths[i] * lengths[j]), least);
                }
            }
        }
    }

    /// <summary>How many places there are.</summary>
    public int Count { get; }

    /// <summary>The places of a set on the inner scale.</summary>
    public double[] Knots(int[] set) => Array.ConvertAll(set, j => data.Places[places[j]]);

    /// <summary>The response as the search needs it: its product with each hinge, and what a straight line leaves of its squares.</summary>
    public (double[] Parts, double Left) Parts(double[] response)
    {
        double level = 0, slope = 0;
        for (var i = 0; i < weights.Length; i++)
        {
            level += weights[i] * response[i];
            slope += weights[i] * (data.Times[i] - mean) * response[i];
        }

        (level, slope) = (level / weight, slope / spread);
        var (s0, s1, left) = (0.0, 0.0, 0.0);
        var parts = new double[Count];
        var row = weights.Length - 1;
        for (var j = Count - 1; j >= 0; j--)
        {
            for (; row >= data.FirstAfter[places[j]]; row--) Add(row);
            parts[j] = lengths[j] > 0 ? (s1 - (data.Places[places[j]] * s0)) / lengths[j] : 0;
        }

        for (; row >= 0; row--) Add(row);
        return (parts, left);

        void Add(int i)
        {
            var rest = response[i] - level - (slope * (data.Times[i] - mean));
            s0 += weights[i] * rest;
            s1 += weights[i] * rest * data.Times[i];
            left += weights[i] * rest * rest;
        }
    }

    /// <summary>The sets of places that explain most, the best first; empty where no set is allowed.</summary>
    /// <param name="parts">The response.</param>
    /// <param name="number">Changes, 1 to 4. One and two: all sets; more: the best of fewer, one place more, then each place in turn to where it explains most.</param>
    /// <param name="keep">How many sets at most.</param>
    public List<(double Gain, int[] Set)> Best(double[] parts, int number, int keep)
    {
        if (number == 1) return Top(Enumerable.Range(0, Count).Where(j => lengths[j] > 0).Select(j => (parts[j] * parts[j], new[] { j })), keep);
        if (number == 2) return Pairs(parts, keep);
        var found = new Dictionary<string, (double, int[])>(StringComparer.Ordinal);
        foreach (var (_, set) in Best(parts, number - 1, Math.Max(keep, 3)))
        {
            if (Added(parts, set) is not { } place) continue;
            var (gain, settled) = Exchanged(parts, [.. set.Append(place.Place).Order()], place.Gain);
            found[string.Join(' ', settled)] = (gain, settled);
        }

        return Top(found.Values, keep);
    }

    /// <summary>The places that explain most beside one that is held: so many before it and so many after it; null where they have no room.</summary>
    public double[]? Beside(double[] parts, int place, int before, int after)
    {
        var held = Array.BinarySearch(places, place);
        if (held < 0) return null;
        int[] set = [held];
        while (before + after > 0)
        {
            var left = before > 0 ? Added(parts, set, 0, held) : null;
            var right = after > 0 ? Added(parts, set, held + 1) : null;
            if (left is null && right is null) return null;
            var takesLeft = right is null || (left is not null && left.Value.Gain >= right.Value.Gain);
            set = [.. set.Append((takesLeft ? left : right)!.Value.Place).Order()];
            (before, after) = takesLeft ? (before - 1, after) : (before, after - 1);
        }

        for (var round = 0; round < 20 && set.Length > 2; round++)
        {
            var now = set;
            foreach (var other in now.Where(j => j != held))
            {
                int[] rest = [.. set.Where(j => j != other)];
                if (rest.Length < set.Length && Added(parts, rest, other < held ? 0 : held + 1, other < held ? held : int.MaxValue) is { } better) set = [.. rest.Append(better.Place).Order()];
            }

            if (set.SequenceEqual(now)) break;
        }

        return Knots(set);
    }

    private static List<(double Gain, int[] Set)> Top(IEnumerable<(double Gain, int[] Set)> sets, int keep) =>
        [.. sets.OrderByDescending(set => set.Gain).ThenBy(set => set.Set[0]).Take(keep)];

    private void Keep(int i, int j, double product, int least)
    {
        (products[(i * Count) + j], products[(j * Count) + i]) = (product, product);
        var left = 1 - (product * product);
        if (i == j || !(left > Independent) || !data.Admits(data.Places[places[i]], data.Places[places[j]], least)) return;
        (inverses[(i * Count) + j], inverses[(j * Count) + i]) = (1 / left, 1 / left);
    }

    private List<(double Gain, int[] Set)> Pairs(double[] parts, int keep)
    {
        var sets = new List<(double, int[])>();
        var (top, first, second) = (0.0, -1, -1);
        for (var i = 0; i < Count; i++)
        {
            var own = parts[i];
            var g = products.AsSpan(i * Count, Count);
            var v = inverses.AsSpan(i * Count, Count);
            var (most, at) = (0.0, -1);
            for (var j = i + 1; j < Count; j++)
            {
                var gain = ((own * own) + (parts[j] * (parts[j] - (2 * g[j] * own)))) * v[j];
                if (gain > most) (most, at) = (gain, j);
            }

            if (at < 0) continue;
            if (keep > 1) sets.Add((most, [i, at]));
            if (most > top) (top, first, second) = (most, i, at);
        }

        return keep > 1 ? Top(sets, keep) : first < 0 ? [] : [(top, [first, second])];
    }

    /// <summary>The place that explains most beside a set, and what they explain together.</summary>
    private (int Place, double Gain)? Added(double[] parts, int[] set, int first = 0, int end = int.MaxValue)
    {
        var size = set.Length;
        var inner = new double[size, size];
        for (var a = 0; a < size; a++)
        {
            for (var b = 0; b < size; b++) inner[a, b] = products[(set[a] * Count) + set[b]];
        }

        if (SymmetricMatrix.Factor(inner, Independent, out _) is not { } factor) return null;
        var inverse = SymmetricMatrix.Inverse(factor);
        var fitted = SymmetricMatrix.Solve(factor, Array.ConvertAll(set, j => parts[j]));
        double before = 0;
        for (var a = 0; a < size; a++) before += fitted[a] * parts[set[a]];
        var (most, at) = (-1.0, -1);
        for (var j = first; j < Math.Min(end, Count); j++)
        {
            var (rest, length, allowed) = (parts[j], 1.0, lengths[j] > 0);
            for (var a = 0; a < size && allowed; a++)
            {
                var g = products[(set[a] * Count) + j];
                allowed = inverses[(set[a] * Count) + j] > 0;
                rest -= g * fitted[a];
                for (var b = 0; b < size; b++) length -= g * inverse[a, b] * products[(set[b] * Count) + j];
            }

            if (allowed && length > Independent && rest * rest > most * length) (most, at) = (rest * rest / length, j);
        }

        return at < 0 ? null : (at, before + most);
    }

    private (double Gain, int[] Set) Exchanged(double[] parts, int[] set, double gain)
    {
        for (var round = 0; round < 50; round++)
        {
            var before = gain;
            for (var k = 0; k < set.Length; k++)
            {
                int[] others = [.. set.Where((_, a) => a != k)];
                if (Added(parts, others) is { } place && place.Gain > gain * (1 + 1e-12)) (set, gain) = ([.. others.Append(place.Place).Order()], place.Gain);
            }

            if (gain <= before) break;
        }

        return (gain, set);
    }
}
