namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>How many rows something was found in, and the first of them. One for each thread.</summary>
internal sealed class FirstRecords
{
    // More than are shown: rows that turn out to be duplicates are taken out of them again.
    private const int Most = 32;

    private readonly uint[] records = new uint[Most];
    private int kept;

    /// <summary>Rows in which it was found.</summary>
    public long Count { get; private set; }

    public void Add(uint record)
    {
        Count++;
        if (kept == Most && record > records[Most - 1]) return;
        Keep(record);
    }

    /// <summary>Adds a row, or counts one off that was added before.</summary>
    public void Add(uint record, int sign)
    {
        if (sign > 0) Add(record);
        else Count--;
    }

    /// <summary>Adds rows that were counted elsewhere.</summary>
    public void AddUnseen(long rows) => Count += rows;

    public void AddAll(FirstRecords other)
    {
        Count += other.Count;
        for (var i = 0; i < other.kept; i++) Keep(other.records[i]);
    }

    /// <summary>The first rows, in order.</summary>
    public IEnumerable<uint> First() => records.Take(kept);

    private void Keep(uint record)
    {
        var at = kept;
        if (kept < Most) kept++;
        else if (record > records[--at]) return;
        for (; at > 0 && records[at - 1] > record; at--) records[at] = records[at - 1];
        records[at] = record;
    }
}
