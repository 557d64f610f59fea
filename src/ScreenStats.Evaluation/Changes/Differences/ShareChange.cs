using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Changes.Differences;

/// <summary>The difference of a share between two evaluations, with limits where what is compared shares no run.</summary>
/// <remarks>
/// Two evaluations of one program share runs, and limits for independent groups do not hold for their whole values: a later evaluation that
/// is nine tenths the earlier one differs from it by a tenth of what the new runs do. So a difference compares what shares no run
/// (<see cref="ChangeBasis"/>), by Newcombe's limits, plain and widened for clusters. The widened ones come from the sites that stand on both sides
/// (<see cref="PairedSites"/>) where both evaluations count the measure by site, and are never inside of the plain ones. Elsewhere each side is widened by a design effect;
/// a part of an evaluation does not have one of its own, so the larger one of the two evaluations is scaled to the trials of the part: 1 + (d - 1) n/N. These hold as if the sides
/// had other sites, so they are too wide, and a difference they hold zero of is not told from chance rather than made by it.
/// </remarks>
internal static class ShareChange
{
    public const string Hidden = "small counts are hidden in the earlier evaluation";
    public const string NotThere = "the earlier evaluation does not have it";
    public const string NothingCounted = "nothing was counted";
    private const string Everybody = "everybody eligible is counted, so there is no sampling to allow for";
    private const string SameDays = "both evaluations cover the same days, so they share their runs";
    private const string WithinEarlier = "every day of this evaluation is in the earlier one too, so they share runs";
    private const string NothingAdded = "nothing of it was added since";
    private const string Corrected = "counts of the days that both cover fell, so what was added since is not known, and the runs are shared";
    private const string SharedRuns = "the runs are shared, and no counts by period tell which";
    private const string LateResults = "results that came late cannot be told from new ones, and no counts by period tell which";
    private const string NoEffect = "how these counts cluster is not known";

    private static readonly string Method = ContrastMethod.Newcombe.Name();

    /// <summary>Trials and events on a side, with what widens their limits.</summary>
    private sealed record Side(long Trials, long Events, double? Effect, long Clusters)
    {
        /// <summary>A part of an evaluation that is as clustered as this one: the effect grows with the trials of a cluster, and so with those of the part.</summary>
        public Side Part(long trials, long events) => this with
        {
            Trials = trials,
            Events = events,
            Effect = Effect is { } effect && Trials > 0 ? 1 + ((Math.Max(1, effect) - 1) * trials / Trials) : Effect,
        };
    }

    public static ChangeRow Of(SnapshotShare? before, SnapshotShare now, ComparedSpans spans, double confidence, PairedSites? sites = null)
    {
        var (basis, from, to, reason) = Compared(before, now, spans);
        var (earlier, later) = (Value(before), Value(now));
        var whole = earlier is { } a && later is { } b ? b - a : (double?)null;
        var undefined = earlier is null ? Why(before) : later is null ? Why(now) : null;
        var row = new ChangeRow
        {
            Key = now.By == Grouping.Program ? Words.Of(now.Measure) : $"{Model.LevelNames.Of(now.By)}|{now.Level}|{Words.Of(now.Measure)}",
            By = now.By,
            Level = now.Level,
            Measure = now.Measure,
            EarlierEvents = before?.Events,
            EarlierTrials = before?.Trials,
            EarlierEstimate = earlier,
            EarlierEstimateUndefined = earlier is null ? Why(before) : null,
            LaterEvents = now.Events,
            LaterTrials = now.Trials,
            LaterEstimate = later,
            LaterEstimateUndefined = later is null ? Why(now) : null,
            Basis = basis,
            FromEvents = from?.Events,
            FromTrials = from?.Trials,
            ToEvents = to?.Events,
            ToTrials = to?.Trials,
            Estimate = whole,
            EstimateUndefined = undefined,
            Lower = null,
            LowerUndefined = undefined ?? reason,
            Upper = null,
            WidenedLower = null,
            WidenedLowerUndefined = undefined ?? reason,
            WidenedUpper = null,
            WidenedMethod = null,
            Method = Method,
            Confidence = confidence,
        };
        if (from is null || to is null) return row;
        var (first, second) = ((double)to.Events / to.Trials, (double)from.Events / from.Trials);
        var plain = ProportionDifference.SquareAndAdd(first, Plain(to, confidence), second, Plain(from, confidence));
        row = row with { Estimate = first - second, EstimateUndefined = null, Lower = plain.Lower, LowerUndefined = null, Upper = plain.Upper };
        if (now.By == Grouping.Program && basis is (ChangeBasis.AddedSince or ChangeBasis.SeparateSpans)
            && sites?.Limits(now.Measure, basis == ChangeBasis.AddedSince, (from.Trials, from.Events), (to.Trials, to.Events), confidence) is { } paired)
        {
            return row with
            {
                WidenedLower = Math.Min(plain.Lower, paired.Lower), WidenedUpper = Math.Max(plain.Upper, paired.Upper), WidenedLowerUndefined = null, WidenedMethod = Methods.MethodNames.PairedSites,
            };
        }

        if (Widened(to, confidence) is not { } wideTo || Widened(from, confidence) is not { } wideFrom) return row with { WidenedLowerUndefined = NoEffect };
        var widened = ProportionDifference.SquareAndAdd(first, wideTo, second, wideFrom);
        return row with
        {
            WidenedLower = Math.Min(plain.Lower, widened.Lower), WidenedUpper = Math.Max(plain.Upper, widened.Upper), WidenedLowerUndefined = null, WidenedMethod = Methods.MethodNames.ScaledEffect,
        };
    }

    private static (ChangeBasis Basis, Side? From, Side? To, string? Reason) Compared(SnapshotShare? before, SnapshotShare now, ComparedSpans spans)
    {
        if (Value(before) is null || Value(now) is null) return (ChangeBasis.WholeValues, null, null, null);
        if (now.Measure == ChangeMeasure.Coverage) return None(Everybody);
        var (from, to) = (new Side(before!.Trials!.Value, before.Events!.Value, before.DesignEffect, before.Clusters ?? 0), new Side(now.Trials!.Value, now.Events!.Value, now.DesignEffect, now.Clusters ?? 0));
        var larger = from.Effect is null || to.Effect is null ? new Side(0, 0, null, 0) : from.Effect > to.Effect ? from : to;
        var byPeriod = now.By == Grouping.Program;
        switch (spans.Relation)
        {
            case SpanRelation.Separate:
                return (ChangeBasis.SeparateSpans, from, to, null);
            case SpanRelation.Grown:
                var added = larger.Part(to.Trials - from.Trials, to.Events - from.Events);
                // A period in which the program lost some may be any site's or lot's.
                var fell = added.Events < 0 || added.Trials < added.Events || spans.Lost(now.Measure);
                // Results of the earlier one's own runs that came late would count as those of new runs.
                var late = spans.ResultsOpen && now.Measure is (ChangeMeasure.FollowUp or ChangeMeasure.ConfirmedPerValidTest or ChangeMeasure.RefutedPerValidTest);
                if (!fell && !late) return added.Trials > 0 ? (ChangeBasis.AddedSince, from, added, null) : None(NothingAdded);
                return byPeriod && spans.LaterOnly(now.Measure) is { Trials: > 0 } since
                    ? (ChangeBasis.PeriodsSince, from, larger.Part(since.Trials, since.Events), null)
                    : None(fell ? Corrected : LateResults);
            case SpanRelation.Overlapping:
                return byPeriod && spans.EarlierOnly(now.Measure) is { Trials: > 0 } own && spans.LaterOnly(now.Measure) is { Trials: > 0 } other
                    ? (ChangeBasis.PeriodsNotShared, larger.Part(own.Trials, own.Events), larger.Part(other.Trials, other.Events), null)
                    : None(SharedRuns);
            case SpanRelation.SameDays:
                return None(SameDays);
            default:
                return None(WithinEarlier);
        }

        static (ChangeBasis, Side?, Side?, string?) None(string reason) => (ChangeBasis.WholeValues, null, null, reason);
    }

    private static double? Value(SnapshotShare? share) => share is { Events: { } events, Trials: > 0 and var trials } && events <= trials ? (double)events / trials : null;

    private static string Why(SnapshotShare? share) => share is null ? NotThere : share.Events is null || share.Trials is null ? Hidden : NothingCounted;

    private static Interval Plain(Side side, double confidence)
    {
        var limits = ProportionInterval.Wilson(side.Events, side.Trials, confidence);
        return new Interval(limits.Lower!.Value, limits.Upper!.Value);
    }

    private static Interval? Widened(Side side, double confidence) => side.Effect is { } effect
        ? WidenedInterval.Wilson(side.Events, side.Trials, Math.Max(1, effect), side.Clusters, confidence) is { Lower: { } lower, Upper: { } upper } ? new Interval(lower, upper) : null
        : null;
}
