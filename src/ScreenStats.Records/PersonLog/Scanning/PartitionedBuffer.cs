using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>
/// Items thrown into partitions by a hash, each partition a list of chunks. One for each sink, so without locks. The memory is not the
/// garbage collector's: hundreds of megabytes that live until one known moment are neither looked through nor kept longer.
/// </summary>
internal sealed unsafe class PartitionedBuffer<T> : IDisposable where T : unmanaged
{
    /// <summary>Number of partitions.</summary>
    public const int Partitions = 256;

    private const int SmallestSlab = 64 << 10;
    private const int LargestSlab = 4 << 20;

    // Small programs stay small.
    private static readonly int[] ChunkLengths = [32, 256, 1024];

    private readonly nint[] current = new nint[Partitions];
    private readonly int[] room = new int[Partitions];
    private readonly int[] filled = new int[Partitions];
    private readonly List<Chunk>?[] full = new List<Chunk>[Partitions];
    private readonly List<(nint Start, int Size)> slabs = [];
    private int slabsUsed;
    private nint slab;
    private int slabRoom;
    private int slabSize = SmallestSlab;

    ~PartitionedBuffer() => Free();

    /// <summary>The partition of a hash: mixed first, so that hashes that differ in low bits only are spread as well.</summary>
    public static int Of(ulong hash) => (int)(Mixed(hash) >> 56);

    /// <summary>A hash mixed: its highest eight bits are the partition.</summary>
    public static ulong Mixed(ulong hash) => hash * 0x9E3779B97F4A7C15ul;

    /// <summary>Bytes of memory that hold items.</summary>
    public long Bytes { get; private set; }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref T Add(int partition)
    {
        ref var at = ref filled[partition];
        if (at == room[partition]) NextChunk(partition);
        return ref Unsafe.AsRef<T>((T*)current[partition] + at++);
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

    /// <summary>The chunks of a partition in the order in which they were filled. Not to be used after <see cref="Dispose"/>.</summary>
    public IEnumerable<Chunk> Chunks(int partition)
    {
        if (full[partition] is { } chunks)
        {
            foreach (var chunk in chunks) yield return chunk;
        }

        yield return new(current[partition], filled[partition]);
    }

    /// <summary>Empties the buffer; the memory is kept for the items to come.</summary>
    public void Clear()
    {
        Array.Clear(current);
        Array.Clear(room);
        Array.Clear(filled);
        Array.Clear(full);
        (slab, slabRoom, slabsUsed, Bytes) = (0, 0, 0, 0);
    }

    /// <summary>Gives the memory back; the buffer is empty then.</summary>
    public void Dispose()
    {
        Free();
        Clear();
        slabSize = SmallestSlab;
        GC.SuppressFinalize(this);
    }

    private void Free()
    {
        foreach (var memory in slabs) NativeMemory.Free((void*)memory.Start);
        slabs.Clear();
    }

    private void NextChunk(int partition)
    {
        if (room[partition] > 0) (full[partition] ??= []).Add(new(current[partition], room[partition]));
        var length = ChunkLengths[Math.Min(full[partition]?.Count ?? 0, ChunkLengths.Length - 1)];
        var bytes = length * sizeof(T);
        if (bytes > slabRoom) NextSlab();

        (current[partition], room[partition], filled[partition]) = (slab, length, 0);
        slab += bytes;
        slabRoom -= bytes;
    }

    private void NextSlab()
    {
        if (slabsUsed == slabs.Count)
        {
            slabs.Add(((nint)NativeMemory.Alloc((nuint)slabSize), slabSize));
            slabSize = Math.Min(2 * slabSize, LargestSlab);
        }

        (slab, slabRoom) = slabs[slabsUsed++];
        Bytes += slabRoom;
    }

    /// <summary>Items in one piece.</summary>
    /// <param name="start">Address of the first.</param>
    /// <param name="length">Number of items.</param>
    internal readonly struct Chunk(nint start, int length)
    {
        public int Length => length;

        public ReadOnlySpan<T> AsSpan() => new((void*)start, length);
    }
}
