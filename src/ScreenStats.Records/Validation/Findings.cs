namespace ScreenStats.Records.Validation;

/// <summary>What one thread found in the rows of one export: counts and the first places, by kind and column.</summary>
internal sealed class Findings
{
    private const int Most = Counting.Diagnostics.Diagnostic.MostPlaces;

    private readonly Entry[] entries;
    private readonly int columns;

    public Findings(int columns)
    {
        this.columns = columns;
        entries = new Entry[Enum.GetValues<Finding>().Length * columns];
    }

    public void Add(Finding finding, int column, long place)
    {
        ref var entry = ref entries[((int)finding * columns) + column];
        if (entry.Count++ >= Most && place > entry.Places![Most - 1]) return;
        Keep(ref entry, place);
    }

    public void Add(Findings other)
    {
        for (var i = 0; i < entries.Length; i++)
        {
            ref var mine = ref entries[i];
            var theirs = other.entries[i];
            mine.Count += theirs.Count;
            for (var k = 0; k < theirs.Kept; k++) Keep(ref mine, theirs.Places![k]);
        }
    }

    /// <summary>Adds a number of rows with the first places of them, in order.</summary>
    public void Add(Finding finding, int column, long count, ReadOnlySpan<long> places)
    {
        ref var entry = ref entries[((int)finding * columns) + column];
        entry.Count += count;
        foreach (var place in places) Keep(ref entry, place);
    }

    public long Count(Finding finding, int column) => entries[((int)finding * columns) + column].Count;

    public long First(Finding finding, int column) => entries[((int)finding * columns) + column].Places![0];

    /// <summary>The first places, in order.</summary>
    public ReadOnlySpan<long> Places(Finding finding, int column)
    {
        var entry = entries[((int)finding * columns) + column];
        return entry.Places.AsSpan(0, entry.Kept);
    }

    private static void Keep(ref Entry entry, long place)
    {
        entry.Places ??= new long[Most];
        var at = entry.Kept;
        if (entry.Kept < Most) entry.Kept++;
        else if (place > entry.Places[--at]) return;
        for (; at > 0 && entry.Places[at - 1] > place; at--) entry.Places[at] = entry.Places[at - 1];
        entry.Places[at] = place;
    }

    private struct Entry
    {
        public long Count;
        public int Kept;
        public long[]? Places;
    }
}
