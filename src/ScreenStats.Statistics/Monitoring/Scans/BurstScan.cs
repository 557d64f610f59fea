namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>Searches lots, sites and periods for the strongest burst of events.</summary>
/// <remarks>
/// <para>A window is some days of one lot at one site, of one lot, of one site, or of all. Its strength is Kulldorff's likelihood ratio of the Bernoulli model; only windows
/// that start and end on a day with an event can be strongest. How strong the strongest is by chance is simulated: the events are thrown on all
/// trials anew, each trial at most once, and everything is searched again. So the chance counts all windows looked at.</para>
/// <para>The same rate is expected everywhere: where sites differ in rate for good reasons a burst may only be a site with a high rate. The strata of
/// <see cref="Lots.StratifiedExactTest"/> have no such flaw, but see no bursts. Source: Kulldorff M, Commun Stat Theory Methods
/// 1997;26:1481-1496; Dwass M, Ann Math Stat 1957;28:181-187 (both from memory).</para>
/// </remarks>
public static class BurstScan
{
    /// <summary>The most events that are searched.</summary>
    public const long LargestEvents = 10_000_000;

    /// <summary>The strongest burst.</summary>
    /// <param name="cells">The counts by lot, site and day, in any order; cells of the same three are added up.</param>
    /// <param name="options">Windows and simulation; their defaults where null.</param>
    /// <returns>The burst and the chance of one as strong; or the reason why there is none. Of equally strong bursts the shortest description wins: lot and site before
    /// lot, before site, before all; then the earlier.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain, or more than <see cref="LargestEvents"/> events.</exception>
    public static BurstScanResult Strongest(IReadOnlyList<BurstCell> cells, BurstScanOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(cells);
        options ??= new BurstScanOptions();
        options.Check();
        var used = InOrder(cells);
        long events = 0, trials = 0;
        foreach (var cell in used) (events, trials) = (checked(events + cell.Events), checked(trials + cell.Trials));
        if (events > LargestEvents) throw new ArgumentOutOfRangeException(nameof(cells), events, "At most ten million events are searched for a burst.");
        BurstScanResult None(UndefinedReason reason) => new(events, trials, null, null, options, reason);
        if (trials == 0) return None(UndefinedReason.NoTrials);
        if (events == 0) return None(UndefinedReason.NoEvents);
        if (events == trials) return None(UndefinedReason.OnlyEvents);

        var search = new BurstSearch(used, (int)events, trials, options);
        if (search.Observed() is not { } burst) return None(UndefinedReason.NoWindowWithExcess);
        if (options.Replicates == 0) return new BurstScanResult(events, trials, burst, null, options, null);
        var (chance, simulated) = search.Chance(burst.LogLikelihoodRatio);
        return new BurstScanResult(events, trials, burst, chance, options, null) { Simulated = simulated };
    }

    /// <summary>The cells with trials by lot, site and day; cells of the same three added up.</summary>
    private static BurstCell[] InOrder(IReadOnlyList<BurstCell> cells)
    {
        var (sorted, count) = (new BurstCell[cells.Count], 0);
        for (var i = 0; i < cells.Count; i++)
        {
            if (cells[i].Trials > 0) sorted[count++] = cells[i];
        }

        Array.Sort(sorted, 0, count, Order.ByPlaceAndDay);
        var used = 0;
        for (var i = 0; i < count; i++)
        {
            if (used > 0 && Order.ByPlaceAndDay.Compare(sorted[used - 1], sorted[i]) == 0)
            {
                var (one, other) = (sorted[used - 1], sorted[i]);
                sorted[used - 1] = new BurstCell(one.Lot, one.Site, one.Day, checked(one.Trials + other.Trials), checked(one.Events + other.Events));
            }
            else sorted[used++] = sorted[i];
        }

        Array.Resize(ref sorted, used);
        return sorted;
    }

    private sealed class Order : IComparer<BurstCell>
    {
        public static readonly Order ByPlaceAndDay = new();

        public int Compare(BurstCell x, BurstCell y) =>
            x.Lot != y.Lot ? x.Lot.CompareTo(y.Lot) : x.Site != y.Site ? x.Site.CompareTo(y.Site) : x.Day.CompareTo(y.Day);
    }
}
