using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>Levels by strata of period, device and specimen (or what else is adjusted for), by one measure and basis.</summary>
internal sealed class ComparedStrata
{
    /// <summary>More categories than these are not adjusted for: each would need events of its own.</summary>
    public const int MostCategories = 60;

    private ComparedStrata(ComparedCells cells, ComparisonMeasure measure, ComparisonBasis basis)
    {
        var used = new List<(ComparedCell Cell, long Trials, long Events)>(cells.All.Count);
        var weeks = new SortedDictionary<int, (long Trials, long Events)>();
        foreach (var cell in cells.All)
        {
            if (cell.IsLeftOut(measure, basis))
            {
                LeftOutRuns += cell.Runs;
                continue;
            }

            var (trials, events) = cell.Of(measure);
            if (trials == 0) continue;
            used.Add((cell, trials, events));
            var before = weeks.GetValueOrDefault(cell.Week);
            weeks[cell.Week] = (before.Trials + trials, before.Events + events);
            Trials += trials;
            Events += events;
        }

        var periods = CoarsePeriods.Of(weeks, cells.Levels.Count > 200 ? 12 : 26);
        First = Adjustment.Of(ComparisonWords.One(cells.By), cells.First, cells.Firsts.Names, used.Select(one => (one.Cell.Level, one.Cell.First, one.Trials, one.Events)));
        Second = Adjustment.Of(ComparisonWords.One(cells.By), cells.Second, cells.Seconds.Names, used.Select(one => (one.Cell.Level, one.Cell.Second, one.Trials, one.Events)));
        Periods = periods.Names;
        var strata = new List<Stratum>();
        var numbers = new Dictionary<(int, int, int), int>();
        var levels = new Dictionary<int, (long Trials, long Events, Dictionary<int, (long Trials, long Events)> Strata)>();
        var siteWeeks = new Dictionary<(int Level, int Site, int Week), (long Trials, long Events, double Expected)>();
        var stratumOf = new int[used.Count];
        for (var i = 0; i < used.Count; i++)
        {
            var (cell, trials, events) = used[i];
            var key = (periods.Of(cell.Week), First.Category(cell.First), Second.Category(cell.Second));
            ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(numbers, key, out var known);
            if (!known)
            {
                number = strata.Count;
                strata.Add(new Stratum(key.Item1, key.Item2, key.Item3));
            }

            stratumOf[i] = number;
            strata[number].Trials += trials;
            strata[number].Events += events;
            ref var level = ref CollectionsMarshal.GetValueRefOrAddDefault(levels, cell.Level, out known);
            if (!known) level.Strata = [];
            (level.Trials, level.Events) = (level.Trials + trials, level.Events + events);
            ref var at = ref CollectionsMarshal.GetValueRefOrAddDefault(level.Strata, number, out _);
            at = (at.Trials + trials, at.Events + events);
        }

        for (var i = 0; i < used.Count; i++)
        {
            var (cell, trials, events) = used[i];
            ref var week = ref CollectionsMarshal.GetValueRefOrAddDefault(siteWeeks, (cell.Level, cell.Site, cell.Week), out _);
            week = (week.Trials + trials, week.Events + events, week.Expected + (trials * strata[stratumOf[i]].Rate));
        }

        Strata = strata;
        var sums = levels.Keys.ToDictionary(level => level, _ => (Sites: default(ClusterSums), Weeks: default(ClusterSums)));
        var sites = new Dictionary<(int Level, int Site), (long Trials, long Events, double Expected)>();
        foreach (var ((level, site, _), week) in siteWeeks)
        {
            ref var sum = ref CollectionsMarshal.GetValueRefOrNullRef(sums, level);
            sum.Weeks = sum.Weeks.With(week.Trials, week.Events);
            ref var at = ref CollectionsMarshal.GetValueRefOrAddDefault(sites, (level, site), out _);
            at = (at.Trials + week.Trials, at.Events + week.Events, at.Expected + week.Expected);
        }

        foreach (var ((level, _), site) in sites)
        {
            ref var sum = ref CollectionsMarshal.GetValueRefOrNullRef(sums, level);
            sum.Sites = sum.Sites.With(site.Trials, site.Events);
        }

        Levels =
        [
            .. levels.Select(level => new ComparedLevel(
                    cells.Levels.Names[level.Key], level.Value.Trials, level.Value.Events,
                    [.. level.Value.Strata.OrderBy(at => at.Key).Select(at => new StratumCount(at.Key, at.Value.Trials, at.Value.Events))],
                    sums[level.Key].Sites, sums[level.Key].Weeks))
                .OrderBy(level => level.Name, ScreenStats.Counting.Cubes.Levels.Order),
        ];
        var ratios = levels.ToDictionary(level => level.Key, level => level.Value.Strata.Sum(at => at.Value.Trials * strata[at.Key].Rate) is > 0 and var expected ? level.Value.Events / expected : 0);
        SiteWeekEffect = Scatter(siteWeeks.Select(week => (week.Value.Trials, week.Value.Events, week.Value.Expected * ratios[week.Key.Level])), levels.Count + periods.Names.Count - 1);
        SiteEffect = cells.First == "site" && First.IsUsed || sites.Count == levels.Count ? null
            : Scatter(sites.Select(site => (site.Value.Trials, site.Value.Events, site.Value.Expected * ratios[site.Key.Level])), levels.Count);
    }

    public long Trials { get; }

    public long Events { get; }

    /// <summary>Levels with trials, in the order of names.</summary>
    public IReadOnlyList<ComparedLevel> Levels { get; }

    public IReadOnlyList<Stratum> Strata { get; }

    /// <summary>First to last day of each period.</summary>
    public IReadOnlyList<string> Periods { get; }

    public Adjustment First { get; }

    public Adjustment Second { get; }

    /// <summary>Runs of the cells that the basis leaves out.</summary>
    public long LeftOutRuns { get; }

    /// <summary>How many times as much the counts of site-weeks scatter around what level and stratum lead to expect as chance makes them; null where too few can tell.</summary>
    public double? SiteWeekEffect { get; }

    /// <summary>The same of whole sites within levels; null where a level is a site, or sites are adjusted for.</summary>
    public double? SiteEffect { get; }

    /// <summary>The program's rate; 0 without trials.</summary>
    public double Rate => Trials == 0 ? 0 : (double)Events / Trials;

    /// <summary>What is adjusted for, in words.</summary>
    public ImmutableArray<string> AdjustedFor =>
        [.. new[] { Periods.Count > 1 ? "period" : "", First.IsUsed ? First.Name : "", Second.IsUsed ? Second.Name : "" }.Where(name => name.Length > 0)];

    /// <summary>What is not, and why, in words.</summary>
    public ImmutableArray<string> NotAdjustedFor =>
        [.. new[] { Periods.Count == 1 ? "period: too few events to tell periods apart" : "", First.NotUsed, Second.NotUsed }.Where(name => name.Length > 0)];

    public static ComparedStrata Of(ComparedCells cells, ComparisonMeasure measure, ComparisonBasis basis) => new(cells, measure, basis);

    /// <summary>Σ (x − e)² / Σ v, corrected for what was estimated; null where fewer than ten degrees of freedom are left.</summary>
    private static double? Scatter(IEnumerable<(long Trials, long Events, double Expected)> clusters, int estimated)
    {
        double squares = 0, chance = 0;
        var count = 0;
        foreach (var (trials, events, expected) in clusters)
        {
            var p = Math.Min(expected / trials, 1);
            squares += (events - expected) * (events - expected);
            chance += trials * p * (1 - p);
            count++;
        }

        var degrees = count - estimated;
        return degrees < 10 || chance <= 0 ? null : squares / chance * count / degrees;
    }
}
