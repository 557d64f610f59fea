using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>The counted runs of one part of the program, by outcome and in their clusters.</summary>
internal sealed class Slice(Grouping grouping, string level, DateOnly? periodStart)
{
    /// <summary>Counts by site and ISO week: the number of the site in the high half of the key, that of the week's Monday in the low.</summary>
    private readonly Dictionary<long, Counts> siteWeeks = [];

    public Grouping Grouping { get; } = grouping;

    public string Level { get; } = level;

    public DateOnly? PeriodStart { get; } = periodStart;

    public long Inconclusive { get; private set; }

    public long Invalid { get; private set; }

    /// <summary>What tells the slice from the others of its grouping.</summary>
    public string Key => PeriodStart is not { } start ? Level
        : Level.Length == 0 ? Day(start) : $"{Level}|{Day(start)}";

    /// <summary>Adds runs of a site, which has one number throughout, in an ISO week.</summary>
    public void Add(int site, DateOnly monday, Outcome outcome, long runs)
    {
        ref var counts = ref CollectionsMarshal.GetValueRefOrAddDefault(siteWeeks, ((long)site << 32) | (uint)monday.DayNumber, out _);
        counts.Runs += runs;
        switch (outcome)
        {
            case Outcome.Negative:
                counts.Tests += runs;
                break;
            case Outcome.Positive:
                counts.Tests += runs;
                counts.Positives += runs;
                break;
            case Outcome.Inconclusive:
                Inconclusive += runs;
                break;
            case Outcome.Invalid:
                Invalid += runs;
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not a member of the enumeration.");
        }
    }

    /// <summary>Positives among valid tests.</summary>
    public ProportionFinding Positivity(double confidence, ClusterSums? persons) =>
        Proportion(counts => (counts.Tests, counts.Positives), confidence, persons);

    /// <summary>Inconclusive and invalid runs among all runs.</summary>
    public ProportionFinding Unusable(double confidence, ClusterSums? persons) =>
        Proportion(counts => (counts.Runs, counts.Runs - counts.Tests), confidence, persons);

    private ProportionFinding Proportion(Func<Counts, (long Trials, long Events)> of, double confidence, ClusterSums? persons)
    {
        ClusterSums weeks = default;
        var sites = new Dictionary<int, (long Trials, long Events)>();
        foreach (var (key, counts) in siteWeeks)
        {
            var (trials, events) = of(counts);
            weeks = weeks.With(trials, events);
            ref var site = ref CollectionsMarshal.GetValueRefOrAddDefault(sites, (int)(key >> 32), out _);
            site = (site.Trials + trials, site.Events + events);
        }

        List<(ClusterLevel, ClusterSums)> clusterings = [(ClusterLevel.Sites, ClusterSums.From(sites.Values)), (ClusterLevel.SiteWeeks, weeks)];
        if (persons is { } sums) clusterings.Insert(0, (ClusterLevel.Persons, sums));
        return ClusteredProportion.Of(weeks.Events, weeks.Trials, confidence, clusterings);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private struct Counts
    {
        public long Runs;
        public long Tests;
        public long Positives;
    }
}
