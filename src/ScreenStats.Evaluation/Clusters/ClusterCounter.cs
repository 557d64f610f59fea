using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>Counts trials and events by site and ISO week, and sums them over sites and over site-weeks.</summary>
internal sealed class ClusterCounter
{
    private readonly Dictionary<(string Site, DateOnly Week), (long Trials, long Events)> siteWeeks = [];

    public long Trials { get; private set; }

    public long Events { get; private set; }

    public void Add(string site, DateOnly day, long trials, long events)
    {
        Trials += trials;
        Events += events;
        var key = (site, ReportPeriods.Monday(day));
        var before = siteWeeks.GetValueOrDefault(key);
        siteWeeks[key] = (before.Trials + trials, before.Events + events);
    }

    /// <summary>Counts by site and ISO week.</summary>
    public IEnumerable<((string Site, DateOnly Week) Key, long Trials, long Events)> Cells =>
        siteWeeks.Select(pair => (pair.Key, pair.Value.Trials, pair.Value.Events));

    public ClusterSums SiteWeeks() => ClusterSums.From(siteWeeks.Values);

    public ClusterSums Sites() => ClusterSums.From(siteWeeks
        .GroupBy(pair => pair.Key.Site, StringComparer.Ordinal)
        .Select(site => (site.Sum(pair => pair.Value.Trials), site.Sum(pair => pair.Value.Events))));

    public ProportionFinding Proportion(double confidence, ClusterSums? persons = null)
    {
        List<(ClusterLevel, ClusterSums)> clusterings = [(ClusterLevel.Sites, Sites()), (ClusterLevel.SiteWeeks, SiteWeeks())];
        if (persons is { } sums) clusterings.Insert(0, (ClusterLevel.Persons, sums));
        return ClusteredProportion.Of(Events, Trials, confidence, clusterings);
    }
}
