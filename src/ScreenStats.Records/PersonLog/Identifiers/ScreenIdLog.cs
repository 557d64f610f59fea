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
    private readonly List<Run> runs = [];
    private int slabsUsed;
    private Print* at;
    private int room;
    private uint next;
    private uint first;
    private int runStart;

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
        if (record != next || Count == 0) Begin(record);
        Put(Math.Max(id >> (64 - PrintBits), 1));
        next = record + 1;
        Any = true;
    }

    /// <summary>Places in the log by slab; a print of 0 is none.</summary>
    public int Slabs => slabsUsed;

    /// <summary>The prints of a slab.</summary>
    public ReadOnlySpan<Print> Slab(int slab) => new((void*)slabs[slab].Start, slab == slabsUsed - 1 ? slabs[slab].Room - room : slabs[slab].Room);

    /// <summary>The rows of all places, as runs without a gap; after <see cref="EndRun"/>.</summary>
    public ReadOnlySpan<Run> Runs => CollectionsMarshal.AsSpan(runs);

    /// <summary>Ends the run that rows are added to.</summary>
    public void EndRun()
    {
        if (Count == runStart) return;
        runs.Add(new(first, Count - runStart));
        (first, runStart) = (next, Count);
    }

    /// <summary>Writes everything away, in order of the highest eight bits: the other 32 and the row. The log is empty then.</summary>
    public void WriteTo(PartitionSpill<ulong> spill)
    {
        EndRun();
        var ends = new int[1 << (PrintBits - 32)];
        for (var slab = 0; slab < slabsUsed; slab++)
        {
            foreach (ref readonly var print in Slab(slab))
            {
                if (print.Whole != 0) ends[print.High]++;
            }
        }

        var sum = 0;
        for (var partition = 0; partition < ends.Length; partition++) (ends[partition], sum) = (sum, sum + ends[partition]);
        var sorted = (ulong*)NativeMemory.Alloc((nuint)Math.Max(sum, 1), sizeof(ulong));
        try
        {
            var rows = new ScreenIdRows(Runs);
            for (var slab = 0; slab < slabsUsed; slab++)
            {
                foreach (ref readonly var print in Slab(slab))
                {
                    var record = rows.Next();
                    if (print.Whole != 0) sorted[ends[print.High]++] = ((ulong)print.Low << 32) | record;
                }
            }

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

    private void Begin(uint record)
    {
        if (Count > 0 && record > next && record - next <= LongestGap)
        {
            for (; next < record; next++) Put(0);
            return;
        }

        EndRun();
        (first, runStart) = (record, Count);
    }

    private void Put(ulong print)
    {
        if (room == 0) NextSlab();
        *at++ = new(print);
        room--;
        Count++;
    }

    private void NextSlab()
    {
        if (slabsUsed == slabs.Count)
        {
            var length = slabs.Count == 0 ? FewestPrints : Math.Min(2 * slabs[^1].Room, MostPrints);
            slabs.Add(((nint)NativeMemory.Alloc((nuint)length * BytesOfPrint), length));
        }

        (var start, room) = slabs[slabsUsed++];
        at = (Print*)start;
        Bytes += (long)room * (BytesOfPrint + sizeof(ulong));
    }

    private void Clear()
    {
        runs.Clear();
        (slabsUsed, room, next, first, runStart, Count, Bytes) = (0, 0, 0, 0, 0, 0, 0);
        at = null;
    }

    private void Free()
    {
        foreach (var (start, _) in slabs) NativeMemory.Free((void*)start);
        slabs.Clear();
    }

    /// <summary>40 bits in five bytes.</summary>
    [StructLayout(LayoutKind.Sequential, Pack = 1)]
    internal readonly struct Print(ulong whole)
    {
        public readonly uint Low = (uint)whole;
        public readonly byte High = (byte)(whole >> 32);

        public ulong Whole => Low | ((ulong)High << 32);
    }

    /// <summary>Rows that follow one another.</summary>
    /// <param name="First">The first.</param>
    /// <param name="Count">How many.</param>
    internal readonly record struct Run(uint First, int Count);
}
