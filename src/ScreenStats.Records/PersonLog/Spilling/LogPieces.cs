using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>The log of all threads, piece by piece: in memory, or written away and read back as much at once as the bound allows.</summary>
internal sealed class LogPieces
{
    /// <summary>What a row takes while its partition is looked at: read back, in order of people, and as a counted run, with what is known of its person.</summary>
    public const int BytesOfRow = 96;

    private readonly IReadOnlyList<PartitionedBuffer<LogEntry>> buffers;
    private readonly IReadOnlyList<PartitionSpill<LogEntry>>? written;
    private readonly int mostRows = int.MaxValue;

    /// <param name="buffers">The log in memory; empty where it was written away.</param>
    /// <param name="written">What was written away; null: nothing.</param>
    /// <param name="room">Bytes of the partitions that are looked at together.</param>
    /// <param name="threads">Threads that would like to look at one each.</param>
    public LogPieces(IReadOnlyList<PartitionedBuffer<LogEntry>> buffers, IReadOnlyList<PartitionSpill<LogEntry>>? written, long room, int threads)
    {
        (this.buffers, this.written, Threads) = (buffers, written, threads);
        if (written is null) return;
        var largest = Enumerable.Range(0, PartitionedBuffer<LogEntry>.Partitions).Max(partition => written.Sum(log => log.Count(partition)));
        Threads = (int)Math.Clamp(room / BytesOfRow / Math.Max(largest, 1), 1, threads);
        mostRows = (int)Math.Clamp(room / BytesOfRow / Threads, 1, Array.MaxLength / 2);
    }

    /// <summary>Partitions that are looked at together, one for each thread.</summary>
    public int Threads { get; }

    /// <summary>Calls back with all rows of a partition, all of one person's in the same call.</summary>
    public void ForEach(int partition, LogPiece piece, Action<LogPiece> scan)
    {
        if (written is null)
        {
            piece.Take(buffers, partition);
            scan(piece);
        }
        else ForEach(new PartitionPart(partition, 0, 0), written, piece, scan);
    }

    private void ForEach(PartitionPart part, IReadOnlyList<PartitionSpill<LogEntry>> logs, LogPiece piece, Action<LogPiece> scan)
    {
        if (piece.TryRead(logs, part, mostRows))
        {
            if (piece.Count > 0) scan(piece);
            return;
        }

        if (part.Bits == PartitionPart.MostBits)
        {
            throw new UnusableDataException(new Diagnostic(ReadingDiagnostics.MemoryTooSmall, Severity.Error, "", null, "", FormattableString.Invariant(
                $"One person has more than {mostRows} rows, which do not fit into the memory that was stated. Check that the column person holds a pseudonym of each person; if it does, state more memory.")));
        }

        for (var number = 0; number < 1 << PartitionPart.SplitBits; number++) ForEach(part.Part(number), logs, piece, scan);
    }
}
