namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>How much memory the rows may take together before they are written into temporary files.</summary>
/// <param name="Log">Bytes of the log of all threads.</param>
/// <param name="Identifiers">Bytes of the identifiers of all threads, with what sorting them needs.</param>
/// <param name="Kits">Bytes of the days of kits of all threads.</param>
/// <param name="Scan">Bytes of the partitions that are looked at together.</param>
internal sealed record MemoryBudget(long Log, long Identifiers, long Kits, long Scan)
{
    /// <summary>
    /// What the runtime, the levels that are counted by, the counts and the evaluation take whatever the number of rows; of what is left a
    /// quarter is for rows, because counts of a large program grow as well.
    /// </summary>
    public const long Fixed = 192L << 20;

    private const int Share = 4;

    /// <summary>The budget within the memory of the whole process.</summary>
    public static MemoryBudget Of(long memory)
    {
        var rows = Math.Max(memory - Fixed, 0) / Share;
        return new(rows * 7 / 10, rows / 5, rows / 10, rows);
    }
}
