using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>
/// What kits say, added up a part of them at a time: nothing is kept of a kit that is in order. One for each thread; what several threads
/// found is added up by <see cref="Add"/>.
/// </summary>
/// <param name="devices">What the kits of a lot hold.</param>
/// <param name="gone">Rows that were taken out again.</param>
/// <param name="tooMany">True where kits are serial numbers of single devices: then they are only looked at for mixed lots.</param>
internal sealed class KitSums(DeviceOfLot devices, RecordSet gone, bool tooMany)
{
    private readonly List<uint> lotsAtSite = [];
    private KitDays.Entry[] entries = [];

    /// <summary>Counted runs with a kit, by site, lot and day.</summary>
    public CountTable Runs { get; } = new();

    /// <summary>Runs beyond what a kit holds, as <see cref="Keys.Conduct"/>.</summary>
    public CountTable Beyond { get; } = new(16);

    /// <summary>The first row of each kit of which more runs are recorded than it holds.</summary>
    public List<uint> Overfull { get; } = [];

    /// <summary>Runs beyond what those kits hold.</summary>
    public long BeyondOverfull { get; private set; }

    /// <summary>The first row with another lot of each kit that was met with several at one site.</summary>
    public List<uint> MixedLots { get; } = [];

    /// <summary>The kits of counted rows.</summary>
    public List<int> Counted { get; } = [];

    /// <summary>Looks at all kits, and gives the memory of what was counted back.</summary>
    public static KitSums Of(IReadOnlyList<KitDays> counted, Func<DeviceOfLot> devices, RecordSet gone, int threads, CancellationToken cancelled)
    {
        foreach (var days in counted) days.PutAll();
        var tooMany = counted.Any(days => days.TooMany);
        KitSums? whole = null;
        Workers.Run(threads, PartitionedBuffer<KitDays.Entry>.Partitions, () => new KitSums(devices(), gone, tooMany),
            (worker, partition) => worker.Take(counted, partition),
            worker =>
            {
                if (whole is null) whole = worker;
                else whole.Add(worker);
            },
            cancelled);
        foreach (var days in counted) days.Dispose();
        whole!.entries = [];
        return whole;
    }

    private void Add(KitSums other)
    {
        Runs.AddAll(other.Runs);
        Beyond.AddAll(other.Beyond);
        Overfull.AddRange(other.Overfull);
        BeyondOverfull += other.BeyondOverfull;
        MixedLots.AddRange(other.MixedLots);
        Counted.AddRange(other.Counted);
    }

    private void Take(IReadOnlyList<KitDays> counted, int partition)
    {
        var rest = Gather(counted, partition);
        rest.Sort(static (a, b) => a.Key != b.Key ? a.Key.CompareTo(b.Key) : a.Day.CompareTo(b.Day));
        while (rest.Length > 0)
        {
            var kit = Keys.KitOf(rest[0].Key);
            var end = 1;
            while (end < rest.Length && Keys.KitOf(rest[end].Key) == kit) end++;
            TakeKit(kit, rest[..end]);
            rest = rest[end..];
        }
    }

    private Span<KitDays.Entry> Gather(IReadOnlyList<KitDays> counted, int partition)
    {
        var count = checked((int)counted.Sum(days => days.Put.Count(partition) + (days.Written?.Count(partition) ?? 0)));
        if (entries.Length < count) entries = GC.AllocateUninitializedArray<KitDays.Entry>(count + (count / 8));
        var at = 0;
        foreach (var days in counted)
        {
            foreach (var chunk in days.Put.Chunks(partition))
            {
                chunk.AsSpan().CopyTo(entries.AsSpan(at));
                at += chunk.Length;
            }

            foreach (var segment in days.Written?.Segments(partition) ?? [])
            {
                days.Written!.Read(segment, 0, entries.AsSpan(at, segment.Count));
                at += segment.Count;
            }
        }

        return entries.AsSpan(0, count);
    }

    // By site, then by lot, then by day.
    private void TakeKit(int kit, ReadOnlySpan<KitDays.Entry> days)
    {
        var met = false;
        while (days.Length > 0)
        {
            var (site, _) = Keys.SiteAndLotOf(days[0].Key);
            lotsAtSite.Clear();
            while (days.Length > 0 && Keys.SiteAndLotOf(days[0].Key) is var (at, lot) && at == site)
            {
                var end = 1;
                while (end < days.Length && days[end].Key == days[0].Key) end++;
                if (FirstOf(days[..end]) is { } first)
                {
                    met = true;
                    if (lot != 0 && !gone.Contains(first)) lotsAtSite.Add(first);
                    Count(site, lot, first, days[..end]);
                }

                days = days[end..];
            }

            if (lotsAtSite.Count < 2) continue;
            lotsAtSite.Sort();
            MixedLots.Add(lotsAtSite[1]);
        }

        if (met) Counted.Add(kit);
    }

    private static uint? FirstOf(ReadOnlySpan<KitDays.Entry> days)
    {
        var first = KitDays.NoRecord;
        foreach (ref readonly var day in days) first = Math.Min(first, day.Record);
        return first == KitDays.NoRecord ? null : first;
    }

    private void Count(int site, int lot, uint first, ReadOnlySpan<KitDays.Entry> days)
    {
        if (tooMany) return;
        var held = devices.Of(lot)?.RunsPerKit;
        var runs = 0L;
        for (var i = 0; i < days.Length;)
        {
            var (day, before) = (days[i].Day, runs);
            for (; i < days.Length && days[i].Day == day; i++) runs += days[i].Runs;
            if (runs == before) continue;
            Runs.Add(Keys.Run(site, lot, day), runs - before);
            var beyond = ConductRule.BeyondKit(runs, held) - ConductRule.BeyondKit(before, held);
            if (beyond > 0) Beyond.Add(Keys.Conduct(ConductKind.BeyondKitContents, site, lot, Keys.DayNumber(day)), beyond);
        }

        var more = ConductRule.BeyondKit(runs, held);
        if (more == 0 || gone.Contains(first)) return;
        BeyondOverfull += more;
        Overfull.Add(first);
    }
}
