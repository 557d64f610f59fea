using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>Counts trials and events by site and ISO week, and sums them over sites and over site-weeks.</summary>
internal sealed class ClusterCounter
{
    private readonly Dictionary<string, Dictionary<int, SiteWeek>> sites = new(StringComparer.Ordinal);
    private readonly List<SiteWeek> siteWeeks = [];

    // Cells come in order of site and day, so that most fall where the one before did.
    private SiteWeek? latest;

    public long Trials { get; private set; }

    public long Events { get; private set; }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(string site, DateOnly day, long trials, long events)
    {
        Trials += trials;
        Events += events;
        // The first day of the calendar is a Monday.
        var week = day.DayNumber / 7;
        if (latest is null || week != latest.Number || !ReferenceEquals(site, latest.Site)) latest = At(site, week);
        latest.Trials += trials;
        latest.Events += events;
    }

    /// <summary>Counts by site and ISO week.</summary>
    public IEnumerable<((string Site, DateOnly Week) Key, long Trials, long Events)> Cells =>
        siteWeeks.Select(cell => ((cell.Site, DateOnly.FromDayNumber(7 * cell.Number)), cell.Trials, cell.Events));

    public ClusterSums SiteWeeks() => ClusterSums.From(siteWeeks.Select(cell => (cell.Trials, cell.Events)));

    public ClusterSums Sites() => ClusterSums.From(sites.Values.Select(site =>
    {
        long trials = 0, events = 0;
        foreach (var cell in site.Values) (trials, events) = (trials + cell.Trials, events + cell.Events);
        return (trials, events);
    }));

    public ProportionFinding Proportion(double confidence, ClusterSums? persons = null)
    {
        List<(ClusterLevel, ClusterSums)> clusterings = [(ClusterLevel.Sites, Sites()), (ClusterLevel.SiteWeeks, SiteWeeks())];
        if (persons is { } sums) clusterings.Insert(0, (ClusterLevel.Persons, sums));
        return ClusteredProportion.Of(Events, Trials, confidence, clusterings);
    }

    private SiteWeek At(string site, int week)
    {
        if (!sites.TryGetValue(site, out var weeks)) sites.Add(site, weeks = []);
        if (weeks.TryGetValue(week, out var cell)) return cell;
        weeks.Add(week, cell = new SiteWeek(site, week));
        siteWeeks.Add(cell);
        return cell;
    }

    private sealed class SiteWeek(string site, int number)
    {
        public string Site { get; } = site;

        /// <summary>Weeks since the first of the calendar.</summary>
        public int Number { get; } = number;

        public long Trials { get; set; }

        public long Events { get; set; }
    }
}
