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
        var used = cells.Where(cell => cell.Trials > 0)
            .GroupBy(cell => (cell.Lot, cell.Site, cell.Day))
            .Select(group => new BurstCell(group.Key.Lot, group.Key.Site, group.Key.Day, group.Sum(cell => cell.Trials), group.Sum(cell => cell.Events)))
            .OrderBy(cell => cell.Lot).ThenBy(cell => cell.Site).ThenBy(cell => cell.Day).ToArray();
        var (events, trials) = (used.Sum(cell => cell.Events), used.Sum(cell => cell.Trials));
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
}
