using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>
/// Finds rows that mean the same among those that may: the hash of the meaning nominates, the file decides. Reads the file under a
/// lock that all threads share.
/// </summary>
/// <param name="source">The export.</param>
/// <param name="gate">Held while the export is read.</param>
internal sealed class TwinFinder(IRowSource source, Lock gate)
{
    // From so many rows with the same 8 bits on, their whole hash is read: pairs would be too many.
    private const int ManyRows = 24;

    private readonly List<(ulong Meaning, uint Record)> rows = [];
    private readonly List<uint> originals = [];

    /// <summary>Adds a row with the lowest 8 bits, or all 64, of the hash of its meaning.</summary>
    public void Add(ulong meaning, uint record) => rows.Add((meaning, record));

    /// <summary>Calls back with every row that means the same as an earlier one, and with the earliest such. Forgets the rows.</summary>
    public void Find(Action<uint, uint> found)
    {
        if (rows.Count > 1)
        {
            rows.Sort();
            if (rows.Count >= ManyRows && rows[^1].Meaning <= byte.MaxValue) ReadWholeMeanings();
            for (var i = 0; i < rows.Count;)
            {
                var meaning = rows[i].Meaning;
                originals.Clear();
                for (; i < rows.Count && rows[i].Meaning == meaning; i++)
                {
                    var record = rows[i].Record;
                    if (OriginalOf(record) is { } first) found(record, first);
                    else originals.Add(record);
                }
            }
        }

        rows.Clear();
    }

    private uint? OriginalOf(uint record)
    {
        foreach (var original in originals)
        {
            lock (gate)
            {
                if (source.MeanTheSame(original, record)) return original;
            }
        }

        return null;
    }

    private void ReadWholeMeanings()
    {
        lock (gate)
        {
            for (var i = 0; i < rows.Count; i++) rows[i] = (source.Read(rows[i].Record).Meaning, rows[i].Record);
        }

        rows.Sort();
    }
}
