namespace ScreenStats.Statistics.Regression;

/// <summary>
/// Rows with trials in one order whatever the order given, and those of the same terms as one: a thousand sites share a hundred combinations of
/// period and kit, and the likelihood needs their sums only.
/// </summary>
internal sealed class RowPatterns
{
    private RowPatterns(BinomialRow[] rows, int[] of, BinomialRow[] merged)
    {
        Rows = rows;
        Of = of;
        Merged = merged;
    }

    /// <summary>The rows with trials, by their terms, then trials, then events.</summary>
    public BinomialRow[] Rows { get; }

    /// <summary>The place in <see cref="Merged"/> of each of <see cref="Rows"/>.</summary>
    public int[] Of { get; }

    /// <summary>One row for each combination of terms, with the sums of events and trials.</summary>
    public BinomialRow[] Merged { get; }

    public static RowPatterns From(IReadOnlyList<BinomialRow> rows)
    {
        var places = new Dictionary<BinomialRow, int>(SameTerms.Instance);
        var (used, place) = (new List<BinomialRow>(rows.Count), new List<int>(rows.Count));
        foreach (var row in rows)
        {
            if (row.Trials == 0) continue;
            if (!places.TryGetValue(row, out var at)) places[row] = at = places.Count;
            used.Add(row);
            place.Add(at);
        }

        BinomialRow[] kinds = [.. places.Keys];
        var byTerms = Enumerable.Range(0, kinds.Length).ToArray();
        Array.Sort(byTerms, (a, b) => kinds[a].Values.SequenceCompareTo(kinds[b].Values));
        var rank = new int[kinds.Length];
        for (var k = 0; k < byTerms.Length; k++) rank[byTerms[k]] = k;

        var order = Enumerable.Range(0, used.Count).ToArray();
        Array.Sort(order, (a, b) =>
        {
            var (first, second) = (rank[place[a]], rank[place[b]]);
            if (first != second) return first.CompareTo(second);
            var (left, right) = (used[a], used[b]);
            return left.Trials != right.Trials ? left.Trials.CompareTo(right.Trials) : left.Events.CompareTo(right.Events);
        });
        var sorted = Array.ConvertAll(order, i => used[i]);
        var of = Array.ConvertAll(order, i => rank[place[i]]);
        var (events, trials) = (new double[kinds.Length], new double[kinds.Length]);
        for (var i = 0; i < sorted.Length; i++)
        {
            events[of[i]] += sorted[i].Events;
            trials[of[i]] += sorted[i].Trials;
        }

        // Sums of parts that are all events must not end below their trials by rounding, nor above them.
        return new RowPatterns(sorted, of, [.. Enumerable.Range(0, kinds.Length).Select(k => new BinomialRow(Math.Min(events[k], trials[k]), trials[k], kinds[byTerms[k]]))]);
    }

    private sealed class SameTerms : IEqualityComparer<BinomialRow>
    {
        public static readonly SameTerms Instance = new();

        public bool Equals(BinomialRow? x, BinomialRow? y) => x!.Values.SequenceEqual(y!.Values);

        public int GetHashCode(BinomialRow row)
        {
            var hash = default(HashCode);
            foreach (var value in row.Values) hash.Add(value + 0.0);
            return hash.ToHashCode();
        }
    }
}
