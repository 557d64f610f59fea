using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>What one sink has written away of its partitions: in rounds, each with all partitions one after the other.</summary>
internal sealed class PartitionSpill<T>(SpillFile file) where T : unmanaged
{
    private readonly List<Segment>?[] segments = new List<Segment>[PartitionedBuffer<T>.Partitions];

    /// <summary>Writes everything that a buffer holds and empties it.</summary>
    public void Write(PartitionedBuffer<T> buffer)
    {
        for (var partition = 0; partition < segments.Length; partition++)
        {
            var (start, count) = (file.Length, 0);
            foreach (var chunk in buffer.Chunks(partition))
            {
                file.Append(MemoryMarshal.AsBytes(chunk.AsSpan()));
                count += chunk.Length;
            }

            if (count > 0) (segments[partition] ??= []).Add(new(start, count));
        }

        buffer.Clear();
    }

    /// <summary>Writes items that stand in order of their partitions.</summary>
    /// <param name="items">The items.</param>
    /// <param name="ends">Where each partition ends.</param>
    public void Write(ReadOnlySpan<T> items, ReadOnlySpan<int> ends)
    {
        for (int partition = 0, start = 0; partition < segments.Length; start = ends[partition++])
        {
            var count = ends[partition] - start;
            if (count > 0) (segments[partition] ??= []).Add(new(file.Length + ((long)start * Marshal.SizeOf<T>()), count));
        }

        file.Append(MemoryMarshal.AsBytes(items));
    }

    /// <summary>Number of items in a partition.</summary>
    public long Count(int partition)
    {
        var count = 0L;
        if (segments[partition] is { } written)
        {
            foreach (var segment in written) count += segment.Count;
        }

        return count;
    }

    /// <summary>Where the items of a partition stand, in the order in which they were written.</summary>
    public IReadOnlyList<Segment> Segments(int partition) => segments[partition] ?? [];

    /// <summary>Reads items of a segment.</summary>
    public void Read(in Segment segment, int from, Span<T> items) =>
        file.Read(MemoryMarshal.AsBytes(items), segment.Start + ((long)from * Marshal.SizeOf<T>()));

    /// <summary>Gives the disk its room back.</summary>
    public void Dispose() => file.Dispose();

    /// <summary>Items of one partition and round.</summary>
    /// <param name="Start">Where they begin in the file.</param>
    /// <param name="Count">How many.</param>
    internal readonly record struct Segment(long Start, int Count);
}
