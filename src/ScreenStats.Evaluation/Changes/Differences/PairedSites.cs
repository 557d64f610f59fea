using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Changes.Differences;

/// <summary>Limits of a difference between two parts of one program in which the same sites stand: what a site always has more or less of cancels.</summary>
/// <remarks>By <see cref="PairedClusters"/>: two designs of independent groups would add up the variances between sites, which are not in the difference at all.</remarks>
/// <param name="earlier">The earlier evaluation.</param>
/// <param name="later">This evaluation.</param>
internal sealed class PairedSites(EvaluationSnapshot earlier, EvaluationSnapshot later)
{
    private readonly Dictionary<(string Level, ChangeMeasure Measure), SnapshotShare> before = Sites(earlier);
    private readonly Dictionary<(string Level, ChangeMeasure Measure), SnapshotShare> now = Sites(later);

    /// <summary>Limits of the difference, later part less earlier one.</summary>
    /// <param name="measure">What is compared.</param>
    /// <param name="added">Whether the later part is what was added since; else it is the later evaluation.</param>
    /// <param name="from">Trials and events of the earlier part.</param>
    /// <param name="to">Trials and events of the later part.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>Null where the sites do not tell the parts, or fewer than <see cref="WidenedInterval.FewestGroups"/> stand in both.</returns>
    public Interval? Limits(ChangeMeasure measure, bool added, (long Trials, long Events) from, (long Trials, long Events) to, double confidence)
    {
        var parts = new List<(long Trials1, long Events1, long Trials2, long Events2)>();
        foreach (var level in before.Keys.Concat(now.Keys).Where(key => key.Measure == measure).Select(key => key.Level).Distinct(StringComparer.Ordinal))
        {
            if (Counts(before, level, measure) is not var (trialsBefore, eventsBefore) || Counts(now, level, measure) is not var (trials, events)) return null;
            if (added) (trials, events) = (trials - trialsBefore, events - eventsBefore);
            if (events < 0 || trials < events) return null;
            parts.Add((trialsBefore, eventsBefore, trials, events));
        }

        // Sites that do not add up to what is compared leave something out.
        if (parts.Sum(part => part.Trials1) != from.Trials || parts.Sum(part => part.Events1) != from.Events) return null;
        if (parts.Sum(part => part.Trials2) != to.Trials || parts.Sum(part => part.Events2) != to.Events) return null;
        return Limits(parts, confidence);
    }

    /// <summary>Limits from the counts of each site in both parts; null where fewer than <see cref="WidenedInterval.FewestGroups"/> have trials in both.</summary>
    internal static Interval? Limits(IReadOnlyCollection<(long Trials1, long Events1, long Trials2, long Events2)> sites, double confidence) =>
        sites.Count(site => site is { Trials1: > 0, Trials2: > 0 }) < WidenedInterval.FewestGroups ? null : PairedClusters.Difference(sites, confidence).Limits;

    private static Dictionary<(string, ChangeMeasure), SnapshotShare> Sites(EvaluationSnapshot snapshot) =>
        snapshot.Shares.Where(share => share.By == Grouping.Site).ToDictionary(share => (share.Level, share.Measure));

    // A site that is not there counted nothing; null where its counts are hidden.
    private static (long Trials, long Events)? Counts(Dictionary<(string, ChangeMeasure), SnapshotShare> sites, string level, ChangeMeasure measure) =>
        !sites.TryGetValue((level, measure), out var share) ? (0, 0) : share is { Trials: { } trials, Events: { } events } ? (trials, events) : null;
}
