using System.Numerics;
using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.PersonLog.Identifiers;

/// <summary>
/// Finds the rows whose prints of a screen_id are equal, a range of prints at a time: a bit for each print, so that nearly all that
/// are there once are passed over, then the few that are left in order. One for each thread.
/// </summary>
internal sealed class RepeatedPrints
{
    private const int BitsOfPrint = 16;

    private readonly List<(ulong Print, uint Record)> candidates = [];
    private readonly List<ulong> again = [];
    private ulong[] bits = [];
    private ulong[] entries = [];
    private int shift;

    /// <summary>Rows with equal prints, by record.</summary>
    public List<uint[]> Groups { get; } = [];

    /// <summary>Looks at a range of logs in memory.</summary>
    /// <param name="logs">The logs.</param>
    /// <param name="rangeBits">Highest bits that tell the range.</param>
    /// <param name="range">Their value.</param>
    public void Find(IReadOnlyList<ScreenIdLog> logs, int rangeBits, int range)
    {
        Begin(logs.Sum(log => (long)log.Count) >> rangeBits);
        var above = 8 - rangeBits;
        foreach (var log in logs)
        {
            for (var slab = 0; slab < log.Slabs; slab++)
            {
                foreach (ref readonly var print in log.Slab(slab))
                {
                    if (print.High >> above == range && print.Whole is var whole and not 0) Mark(whole);
                }
            }
        }

        if (!AnyAgain()) return;
        foreach (var log in logs)
        {
            var rows = new ScreenIdRows(log.Runs);
            for (var slab = 0; slab < log.Slabs; slab++)
            {
                foreach (ref readonly var print in log.Slab(slab))
                {
                    var record = rows.Next();
                    if (print.High >> above == range && print.Whole is var whole and not 0) Collect(whole, record);
                }
            }
        }

        Group();
    }

    /// <summary>Looks at a partition of what was written away.</summary>
    public void Find(IReadOnlyList<PartitionSpill<ulong>> written, int partition)
    {
        var total = checked((int)written.Sum(log => log.Count(partition)));
        if (entries.Length < total) entries = GC.AllocateUninitializedArray<ulong>(total + (total / 8));
        var count = 0;
        foreach (var log in written)
        {
            foreach (var segment in log.Segments(partition))
            {
                log.Read(segment, 0, entries.AsSpan(count, segment.Count));
                count += segment.Count;
            }
        }

        Begin(count);
        foreach (var entry in entries.AsSpan(0, count)) Mark(entry >> 32);
        if (!AnyAgain()) return;
        foreach (var entry in entries.AsSpan(0, count)) Collect(entry >> 32, (uint)entry);
        Group();
    }

    private void Begin(long count)
    {
        again.Clear();
        candidates.Clear();
        var size = (int)Math.Min(BitOperations.RoundUpToPowerOf2((ulong)Math.Max(count * BitsOfPrint / 64, 64)), 1 << 26);
        if (bits.Length != size) bits = new ulong[size];
        else Array.Clear(bits);
        shift = 64 - BitOperations.Log2((uint)size);
    }

    // Prints are bits of a good hash, but those of a range share the highest.
    private ref ulong Word(ulong print, out ulong bit)
    {
        var mixed = print * 0x9E3779B97F4A7C15ul;
        bit = 1ul << (int)(mixed & 63);
        return ref bits[mixed >> shift];
    }

    private void Mark(ulong print)
    {
        ref var word = ref Word(print, out var bit);
        if ((word & bit) != 0) again.Add(print);
        else word |= bit;
    }

    private bool AnyAgain()
    {
        if (again.Count == 0) return false;
        Array.Clear(bits);
        foreach (var print in again) Word(print, out var bit) |= bit;
        return true;
    }

    private void Collect(ulong print, uint record)
    {
        if ((Word(print, out var bit) & bit) != 0) candidates.Add((print, record));
    }

    private void Group()
    {
        candidates.Sort();
        var found = CollectionsMarshal.AsSpan(candidates);
        for (var i = 0; i < found.Length;)
        {
            var start = i;
            while (i < found.Length && found[i].Print == found[start].Print) i++;
            if (i - start == 1) continue;
            var group = new uint[i - start];
            for (var k = start; k < i; k++) group[k - start] = found[k].Record;
            Groups.Add(group);
        }
    }
}
