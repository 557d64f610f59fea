using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>
/// The rows of a partition, or of a part of one, where a scan can see them: where they lie in memory, or read back. Its buffer is used
/// again for the next piece, so one for each thread.
/// </summary>
internal sealed unsafe class LogPiece
{
    private const int BlockLength = 4096;

    private readonly List<(int Sink, PartitionedBuffer<LogEntry>.Chunk Chunk)> chunks = [];
    // Pinned: a chunk is an address.
    private LogEntry[] rows = [];
    private LogEntry[] block = [];

    /// <summary>Runs of rows, each with the number of the sink whose codes it has.</summary>
    public IReadOnlyList<(int Sink, PartitionedBuffer<LogEntry>.Chunk Chunk)> Chunks => chunks;

    /// <summary>Number of rows.</summary>
    public int Count { get; private set; }

    /// <summary>The rows of a partition that lie in memory.</summary>
    public void Take(IReadOnlyList<PartitionedBuffer<LogEntry>> logs, int partition)
    {
        Begin();
        for (var sink = 0; sink < logs.Count; sink++)
        {
            foreach (var chunk in logs[sink].Chunks(partition)) Add(sink, chunk);
        }
    }

    /// <summary>Reads the rows of a part of a partition back; false where they are more than may be looked at together.</summary>
    public bool TryRead(IReadOnlyList<PartitionSpill<LogEntry>> logs, PartitionPart part, int most)
    {
        Begin();
        var total = logs.Sum(log => log.Count(part.Partition));
        if (part.Bits == 0 && total > most) return false;
        Room((int)Math.Min(total, most));
        for (var sink = 0; sink < logs.Count; sink++)
        {
            foreach (var segment in logs[sink].Segments(part.Partition))
            {
                var start = Count;
                if (part.Bits == 0)
                {
                    logs[sink].Read(segment, 0, rows.AsSpan(start, segment.Count));
                    Add(sink, At(start, segment.Count));
                }
                else if (!TrySelect(logs[sink], segment, part, start, most, out var count)) return false;
                else Add(sink, At(start, count));
            }
        }

        return true;
    }

    private bool TrySelect(PartitionSpill<LogEntry> log, PartitionSpill<LogEntry>.Segment segment, PartitionPart part, int start, int most, out int count)
    {
        if (block.Length == 0) block = new LogEntry[BlockLength];
        count = 0;
        for (var from = 0; from < segment.Count; from += BlockLength)
        {
            var read = block.AsSpan(0, Math.Min(BlockLength, segment.Count - from));
            log.Read(segment, from, read);
            foreach (ref readonly var row in read)
            {
                if (!part.Holds(row.Person)) continue;
                if (start + count == most) return false;
                rows[start + count++] = row;
            }
        }

        return true;
    }

    private void Begin()
    {
        chunks.Clear();
        Count = 0;
    }

    private void Add(int sink, PartitionedBuffer<LogEntry>.Chunk chunk)
    {
        if (chunk.Length == 0) return;
        chunks.Add((sink, chunk));
        Count = checked(Count + chunk.Length);
    }

    private void Room(int length)
    {
        if (rows.Length < length) rows = GC.AllocateUninitializedArray<LogEntry>(length + (length / 8), pinned: true);
    }

    private PartitionedBuffer<LogEntry>.Chunk At(int start, int length) =>
        new((nint)Unsafe.AsPointer(ref MemoryMarshal.GetArrayDataReference(rows)) + ((nint)start * sizeof(LogEntry)), length);
}
