using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>The counted runs of one part of the program, by outcome and in their clusters.</summary>
internal sealed class Slice(Grouping grouping, string level, DateOnly? periodStart)
{
    // Above the last day's number. With the site in the high half of the key a thousand sites and five years of weeks would share three thousand hashes.
    private const long DaysOfCalendar = 4_000_000;

    /// <summary>Counts by site and ISO week: the number of the site times the days of the calendar, plus that of the week's Monday.</summary>
    private Dictionary<long, SliceCounts>? siteWeeks;

    // Most slices of a site and period have one site-week: a dictionary for each would be most of the memory.
    private long onlyKey = -1;
    private SliceCounts only;

    public Grouping Grouping { get; } = grouping;

    public string Level { get; } = level;

    public DateOnly? PeriodStart { get; } = periodStart;

    public long Inconclusive { get; private set; }

    public long Invalid { get; private set; }

    /// <summary>What tells the slice from the others of its grouping.</summary>
    public string Key => PeriodStart is not { } start ? Level
        : Level.Length == 0 ? Day(start) : $"{Level}|{Day(start)}";

    /// <summary>Adds runs of a site, which has one number throughout, in an ISO week.</summary>
    public void Add(int site, DateOnly monday, SliceCounts added)
    {
        ref var counts = ref At((site * DaysOfCalendar) + monday.DayNumber);
        counts.Runs += added.Runs;
        counts.Tests += added.Tests;
        counts.Positives += added.Positives;
        Inconclusive += added.Inconclusive;
        Invalid += added.Runs - added.Tests - added.Inconclusive;
    }

    /// <summary>Positives among valid tests.</summary>
    public ProportionFinding Positivity(double confidence, ClusterSums? persons) =>
        Proportion(counts => (counts.Tests, counts.Positives), confidence, persons);

    /// <summary>Inconclusive and invalid runs among all runs.</summary>
    public ProportionFinding Unusable(double confidence, ClusterSums? persons) =>
        Proportion(counts => (counts.Runs, counts.Runs - counts.Tests), confidence, persons);

    private ref SliceCounts At(long key)
    {
        if (siteWeeks is null)
        {
            if (onlyKey < 0) onlyKey = key;
            if (onlyKey == key) return ref only;
            siteWeeks = new() { [onlyKey] = only };
        }

        return ref CollectionsMarshal.GetValueRefOrAddDefault(siteWeeks, key, out _);
    }

    private IEnumerable<KeyValuePair<long, SliceCounts>> SiteWeeks() => siteWeeks ?? (onlyKey < 0 ? Enumerable.Empty<KeyValuePair<long, SliceCounts>>() : [new(onlyKey, only)]);

    private ProportionFinding Proportion(Func<SliceCounts, (long Trials, long Events)> of, double confidence, ClusterSums? persons)
    {
        ClusterSums weeks = default;
        var sites = new Dictionary<int, (long Trials, long Events)>();
        foreach (var (key, counts) in SiteWeeks())
        {
            var (trials, events) = of(counts);
            weeks = weeks.With(trials, events);
            ref var site = ref CollectionsMarshal.GetValueRefOrAddDefault(sites, (int)(key / DaysOfCalendar), out _);
            site = (site.Trials + trials, site.Events + events);
        }

        List<(ClusterLevel, ClusterSums)> clusterings = [(ClusterLevel.Sites, ClusterSums.From(sites.Values)), (ClusterLevel.SiteWeeks, weeks)];
        if (persons is { } sums) clusterings.Insert(0, (ClusterLevel.Persons, sums));
        return ClusteredProportion.Of(weeks.Events, weeks.Trials, confidence, clusterings);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
