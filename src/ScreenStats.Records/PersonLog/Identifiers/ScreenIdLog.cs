using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.PersonLog.Identifiers;

/// <summary>
/// What is kept of the screen_ids of one thread's rows: five bytes each, 40 bits of the hash, in order of the rows. The row of an
/// identifier is counted from where a run of rows without a gap began. Equal bits only nominate: identifiers are compared in the file.
/// </summary>
internal sealed unsafe class ScreenIdLog : IDisposable
{
    /// <summary>Bits of the hash that are kept.</summary>
    public const int PrintBits = 40;

    private const int BytesOfPrint = PrintBits / 8;

    // A run costs as much as a few prints: so many rows without an identifier are passed over in it.
    private const int LongestGap = 2;
    private const int FewestPrints = 1 << 10;
    private const int MostPrints = 1 << 18;

    private readonly List<(nint Start, int Room)> slabs = [];
    private readonly List<(uint First, int Count)> runs = [];
    private int slabsUsed;
    private byte* at;
    private int room;
    private uint next;

    ~ScreenIdLog() => Free();

    /// <summary>Places in the log, with those of rows that were passed over.</summary>
    public int Count { get; private set; }

    /// <summary>True once an identifier was added.</summary>
    public bool Any { get; private set; }

    /// <summary>Bytes of memory, with what <see cref="WriteTo"/> needs.</summary>
    public long Bytes { get; private set; }

    /// <summary>Adds the identifier of a row.</summary>
    /// <param name="id">Hash of the identifier.</param>
    /// <param name="record">The row: after the one before.</param>
    public void Add(ulong id, uint record)
    {
        if (record != next || runs.Count == 0) Begin(record);
        Put(Math.Max(id >> (64 - PrintBits), 1));
        next = record + 1;
        Any = true;
    }

    /// <summary>Calls back with each identifier whose highest bits have a value.</summary>
    /// <param name="bits">Number of highest bits, at most 8.</param>
    /// <param name="value">Their value.</param>
    /// <param name="found">Takes the print.</param>
    public void ForEach(int bits, int value, Action<ulong> found)
    {
        var left = Count;
        for (var slab = 0; left > 0; slab++)
        {
            var print = (byte*)slabs[slab].Start;
            for (var end = print + (Math.Min(left, slabs[slab].Room) * BytesOfPrint); print < end; print += BytesOfPrint)
            {
                if (print[4] >> (8 - bits) == value && Print(print) is var whole and not 0) found(whole);
            }

            left -= slabs[slab].Room;
        }
    }

    /// <summary>The same with the row of each.</summary>
    public void ForEach(int bits, int value, Action<ulong, uint> found)
    {
        var (slab, place) = (0, 0);
        foreach (var (first, count) in runs)
        {
            for (var i = 0; i < count; i++)
            {
                if (place == slabs[slab].Room) (slab, place) = (slab + 1, 0);
                var print = (byte*)slabs[slab].Start + (place++ * BytesOfPrint);
                if (print[4] >> (8 - bits) == value && Print(print) is var whole and not 0) found(whole, first + (uint)i);
            }
        }
    }

    /// <summary>Writes everything away, in order of the highest eight bits: the other 32 and the row. The log is empty then.</summary>
    public void WriteTo(PartitionSpill<ulong> spill)
    {
        var ends = new int[1 << (PrintBits - 32)];
        ForEach(0, 0, print => ends[print >> 32]++);
        var sum = 0;
        for (var partition = 0; partition < ends.Length; partition++) (ends[partition], sum) = (sum, sum + ends[partition]);
        var sorted = (ulong*)NativeMemory.Alloc((nuint)Math.Max(sum, 1), sizeof(ulong));
        try
        {
            ForEach(0, 0, (print, record) => sorted[ends[print >> 32]++] = (print << 32) | record);
            spill.Write(new ReadOnlySpan<ulong>(sorted, sum), ends);
        }
        finally
        {
            NativeMemory.Free(sorted);
        }

        Clear();
    }

    /// <summary>Gives the memory back; the log is empty then.</summary>
    public void Dispose()
    {
        Free();
        Clear();
        GC.SuppressFinalize(this);
    }

    private static ulong Print(byte* print) => *(uint*)print | ((ulong)print[4] << 32);

    private void Begin(uint record)
    {
        if (runs.Count > 0 && record > next && record - next <= LongestGap)
        {
            for (; next < record; next++) Put(0);
        }
        else runs.Add((record, 0));
    }

    private void Put(ulong print)
    {
        if (room == 0) NextSlab();
        *(uint*)at = (uint)print;
        at[4] = (byte)(print >> 32);
        at += BytesOfPrint;
        room--;
        Count++;
        CollectionsMarshal.AsSpan(runs)[^1].Count++;
    }

    private void NextSlab()
    {
        if (slabsUsed == slabs.Count)
        {
            var length = slabs.Count == 0 ? FewestPrints : Math.Min(2 * slabs[^1].Room, MostPrints);
            slabs.Add(((nint)NativeMemory.Alloc((nuint)length * BytesOfPrint), length));
        }

        (var start, room) = slabs[slabsUsed++];
        at = (byte*)start;
        Bytes += (long)room * (BytesOfPrint + sizeof(ulong));
    }

    private void Clear()
    {
        runs.Clear();
        (slabsUsed, room, next, Count, Bytes) = (0, 0, 0, 0, 0);
        at = null;
    }

    private void Free()
    {
        foreach (var (start, _) in slabs) NativeMemory.Free((void*)start);
        slabs.Clear();
    }
}
