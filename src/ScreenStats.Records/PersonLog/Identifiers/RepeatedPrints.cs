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
    private const int BitsOfPrintAgain = 64;
    private const int Batch = 1 << 10;

    private readonly PrintFilter met = new();
    private readonly PrintFilter metAgain = new();
    private readonly List<(ulong Print, uint Record)> candidates = [];
    private readonly List<ulong> again = [];
    private readonly ulong[] prints = new ulong[Batch];
    private readonly int[] places = new int[Batch];
    private ulong[] entries = [];

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
                for (var rest = log.Slab(slab); !rest.IsEmpty; rest = rest[Math.Min(Batch, rest.Length)..])
                {
                    var count = OfRange(rest, above, range);
                    foreach (var print in prints.AsSpan(0, count))
                    {
                        if (print != 0) Mark(print);
                    }
                }
            }
        }

        if (!AnyAgain()) return;
        foreach (var log in logs)
        {
            var rows = new ScreenIdRows(log.Runs);
            for (var slab = 0; slab < log.Slabs; slab++)
            {
                for (var rest = log.Slab(slab); !rest.IsEmpty; rest = rest[Math.Min(Batch, rest.Length)..])
                {
                    var count = OfRange(rest, above, range);
                    for (var i = 0; i < count; i++)
                    {
                        if (prints[i] != 0 && metAgain.Holds(prints[i])) candidates.Add((prints[i], rows.At(places[i])));
                    }

                    rows.Pass(Math.Min(Batch, rest.Length));
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
        foreach (var entry in entries.AsSpan(0, count))
        {
            if (metAgain.Holds(entry >> 32)) candidates.Add((entry >> 32, (uint)entry));
        }

        Group();
    }

    private void Begin(long count)
    {
        again.Clear();
        candidates.Clear();
        met.Begin(count, BitsOfPrint);
    }

    /// <summary>Gathers the prints of a range among the next ones, with their places. Without a branch, which would be guessed wrong as often as not.</summary>
    private int OfRange(ReadOnlySpan<ScreenIdLog.Print> next, int above, int range)
    {
        if (next.Length > Batch) next = next[..Batch];
        var count = 0;
        for (var i = 0; i < next.Length; i++)
        {
            ref readonly var print = ref next[i];
            prints[count] = print.Whole;
            places[count] = i;
            count += print.High >> above == range ? 1 : 0;
        }

        return count;
    }

    private void Mark(ulong print)
    {
        if (!met.Add(print)) again.Add(print);
    }

    private bool AnyAgain()
    {
        if (again.Count == 0) return false;
        metAgain.Begin(again.Count, BitsOfPrintAgain);
        foreach (var print in again) metAgain.Add(print);
        return true;
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
