using System.Collections.Immutable;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;

namespace ScreenStats.Evaluation.Changes.Differences;

/// <summary>How the days of two evaluations lie, and which periods hold no run of both.</summary>
internal sealed class ComparedSpans
{
    private readonly ImmutableArray<SnapshotPeriod> earlierOnly;
    private readonly ImmutableArray<SnapshotPeriod> laterOnly;
    private readonly ImmutableArray<(SnapshotPeriod Before, SnapshotPeriod Now)> both;

    public ComparedSpans(EvaluationSnapshot earlier, EvaluationSnapshot later)
    {
        var (firstBefore, lastBefore, first, last) = (earlier.FirstDay!.Value, earlier.LastDay!.Value, later.FirstDay!.Value, later.LastDay!.Value);
        Relation = lastBefore < first ? SpanRelation.Separate
            : firstBefore == first && lastBefore == last ? SpanRelation.SameDays
            : first <= firstBefore && lastBefore <= last ? SpanRelation.Grown
            : lastBefore == last ? SpanRelation.Shortened
            : SpanRelation.Overlapping;
        earlierOnly = [.. earlier.Periods.Where(period => period.End < first)];
        laterOnly = [.. later.Periods.Where(period => period.Start > lastBefore)];
        // Where small counts are hidden, how many were open is not looked at: which way is taken would tell.
        ResultsOpen = later.SuppressBelow > 0 || earlier.Shares.FirstOrDefault(share => share is { By: Grouping.Program, Measure: ChangeMeasure.FollowUp }) is not { Trials: { } positives, Events: { } conclusive }
            || conclusive < positives;
        var now = later.Periods.ToDictionary(period => (period.Start, period.End));
        both =
        [
            .. earlier.Periods.Where(period => period.Start >= first && period.End <= lastBefore && now.ContainsKey((period.Start, period.End)))
                .Select(period => (period, now[(period.Start, period.End)])),
        ];
    }

    public SpanRelation Relation { get; }

    /// <summary>Whether positives of the earlier evaluation had no conclusive result yet, or it does not tell: such results may have come since.</summary>
    public bool ResultsOpen { get; }

    /// <summary>Whole periods that both evaluations count.</summary>
    public long Shared => both.Length;

    /// <summary>Those of them in which a count fell, which only a correction makes.</summary>
    public long Fallen => both.Count(pair => Fell(pair.Before, pair.Now));

    /// <summary>Those of them in which a count rose and none fell: runs or results came late.</summary>
    public long Risen => both.Count(pair => pair.Before != pair.Now && !Fell(pair.Before, pair.Now));

    /// <summary>Whether a measure lost events or others in a period that both count.</summary>
    public bool Lost(ChangeMeasure measure) => both.Any(pair =>
        pair.Before.Of(measure) is var (trialsBefore, eventsBefore) && pair.Now.Of(measure) is var (trials, events) && (events < eventsBefore || trials - events < trialsBefore - eventsBefore));

    /// <summary>What only the earlier evaluation has; null where it is not counted by period.</summary>
    public (long Trials, long Events)? EarlierOnly(ChangeMeasure measure) => Sum(earlierOnly, measure);

    /// <summary>What only the later evaluation has; null where it is not counted by period.</summary>
    public (long Trials, long Events)? LaterOnly(ChangeMeasure measure) => Sum(laterOnly, measure);

    private static (long Trials, long Events)? Sum(ImmutableArray<SnapshotPeriod> periods, ChangeMeasure measure)
    {
        (long Trials, long Events)? sum = null;
        foreach (var period in periods)
        {
            if (period.Of(measure) is not var (trials, events)) return null;
            sum = ((sum?.Trials ?? 0) + trials, (sum?.Events ?? 0) + events);
        }

        return sum;
    }

    // Results that came late turn open positives into conclusive ones, so these are no counts that must not fall.
    private static bool Fell(SnapshotPeriod before, SnapshotPeriod now) =>
        now.Positives < before.Positives || now.Tests - now.Positives < before.Tests - before.Positives || now.Unusable < before.Unusable
        || now.Confirmed < before.Confirmed || now.Conclusive - now.Confirmed < before.Conclusive - before.Confirmed;
}
