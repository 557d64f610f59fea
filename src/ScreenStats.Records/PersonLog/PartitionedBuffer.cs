using System.Runtime.CompilerServices;

namespace ScreenStats.Records.PersonLog;

/// <summary>Items thrown into partitions by a hash, each partition a list of chunks. One for each sink, so without locks.</summary>
internal sealed class PartitionedBuffer<T> where T : unmanaged
{
    /// <summary>Number of partitions.</summary>
    public const int Partitions = 256;

    // Small programs stay small; the chunks of large ones are big enough to be left where they are by the garbage collector.
    private static readonly int[] ChunkLengths = [64, 512, Math.Max(2048, 98_304 / Unsafe.SizeOf<T>())];

    private readonly T[][] current = new T[Partitions][];
    private readonly int[] filled = new int[Partitions];
    private readonly List<T[]>?[] full = new List<T[]>[Partitions];

    public PartitionedBuffer() => Array.Fill(current, []);

    /// <summary>The partition of a hash: mixed first, so that hashes that differ in low bits only are spread as well.</summary>
    public static int Of(ulong hash) => (int)((hash * 0x9E3779B97F4A7C15ul) >> 56);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref T Add(int partition)
    {
        ref var at = ref filled[partition];
        if (at == current[partition].Length) NextChunk(partition);
        return ref current[partition][at++];
    }

    /// <summary>Number of items in a partition.</summary>
    public int Count(int partition)
    {
        var count = filled[partition];
        if (full[partition] is { } chunks)
        {
            foreach (var chunk in chunks) count += chunk.Length;
        }

        return count;
    }

    /// <summary>The chunks of a partition in the order in which they were filled.</summary>
    public IEnumerable<ArraySegment<T>> Chunks(int partition)
    {
        if (full[partition] is { } chunks)
        {
            foreach (var chunk in chunks) yield return chunk;
        }

        yield return new(current[partition], 0, filled[partition]);
    }

    /// <summary>Gives the memory of a partition back.</summary>
    public void Drop(int partition)
    {
        current[partition] = [];
        filled[partition] = 0;
        full[partition] = null;
    }

    private void NextChunk(int partition)
    {
        if (current[partition].Length > 0) (full[partition] ??= []).Add(current[partition]);
        var step = Math.Min(full[partition]?.Count ?? 0, ChunkLengths.Length - 1);
        current[partition] = GC.AllocateUninitializedArray<T>(ChunkLengths[step]);
        filled[partition] = 0;
    }
}
