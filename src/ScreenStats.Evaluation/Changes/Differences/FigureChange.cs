using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Changes.Differences;

/// <summary>The difference of a figure that is no share of counts: with limits only where the two evaluations share no run.</summary>
internal static class FigureChange
{
    private const string SharedRuns = "the two evaluations share runs, and the figure cannot be taken apart";
    private const string NoLimits = "one of the two has no limits";
    private const string OtherConfidence = "the earlier limits have another confidence";

    public static ChangeRow Of(SnapshotFigure? before, SnapshotFigure now, ComparedSpans spans, double confidence)
    {
        var whole = before?.Estimate is { } a && now.Estimate is { } b ? b - a : (double?)null;
        var earlierUndefined = before?.Estimate is null ? before?.Undefined ?? (before is null ? ShareChange.NotThere : ShareChange.Hidden) : null;
        var laterUndefined = now.Estimate is null ? now.Undefined ?? ShareChange.NothingCounted : null;
        var undefined = earlierUndefined ?? laterUndefined;
        var separate = spans.Relation == SpanRelation.Separate;
        var reason = undefined ?? (!separate ? SharedRuns
            : before!.Lower is null || before.Upper is null || now.Lower is null || now.Upper is null ? NoLimits
            : before.Confidence != confidence || now.Confidence != confidence ? OtherConfidence : null);
        var limits = reason is null
            ? ProportionDifference.SquareAndAdd(now.Estimate!.Value, Limits(now), before!.Estimate!.Value, Limits(before))
            : (Interval?)null;
        return new ChangeRow
        {
            Key = Words.Of(now.Measure),
            By = Grouping.Program,
            Level = "",
            Measure = now.Measure,
            EarlierEvents = null,
            EarlierTrials = null,
            EarlierEstimate = before?.Estimate,
            EarlierEstimateUndefined = earlierUndefined,
            LaterEvents = null,
            LaterTrials = null,
            LaterEstimate = now.Estimate,
            LaterEstimateUndefined = laterUndefined,
            Basis = separate && undefined is null ? ChangeBasis.SeparateSpans : ChangeBasis.WholeValues,
            FromEvents = null,
            FromTrials = null,
            ToEvents = null,
            ToTrials = null,
            Estimate = whole,
            EstimateUndefined = undefined,
            // The limits of these figures allow for clusters already.
            Lower = limits?.Lower,
            LowerUndefined = reason,
            Upper = limits?.Upper,
            WidenedLower = limits?.Lower,
            WidenedLowerUndefined = reason,
            WidenedUpper = limits?.Upper,
            WidenedMethod = limits is null ? null : ContrastMethod.Newcombe.Name(),
            Method = ContrastMethod.Newcombe.Name(),
            Confidence = confidence,
        };
    }

    private static Interval Limits(SnapshotFigure figure) =>
        new(Math.Min(figure.Lower!.Value, figure.Estimate!.Value), Math.Max(figure.Upper!.Value, figure.Estimate.Value));
}
