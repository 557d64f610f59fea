namespace ScreenStats.Records.Validation;

/// <summary>What one thread found in the rows of one export: counts and the first place, by kind and column.</summary>
internal sealed class Findings
{
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
        if (entry.Count++ == 0 || place < entry.First) entry.First = place;
    }

    public void Add(Findings other)
    {
        for (var i = 0; i < entries.Length; i++)
        {
            ref var mine = ref entries[i];
            var theirs = other.entries[i];
            if (theirs.Count == 0) continue;
            if (mine.Count == 0 || theirs.First < mine.First) mine.First = theirs.First;
            mine.Count += theirs.Count;
        }
    }

    public long Count(Finding finding, int column) => entries[((int)finding * columns) + column].Count;

    public long First(Finding finding, int column) => entries[((int)finding * columns) + column].First;

    private struct Entry
    {
        public long Count;
        public long First;
    }
}
