using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Economics.Decision;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The decision curve from the counts of the program.</summary>
internal static class DecisionRows
{
    private const double PerScreens = 1_000;

    private static readonly double[] Thresholds = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

    public static ImmutableArray<WorthDecisionPoint> Of(Tally tally, CadenceWork work)
    {
        if (!tally.Cells.HasConfirmatory) return [];
        var counts = RunCounts.Of(tally.Cells.Screens);
        var screens = counts.ValidTests - counts.PositivesWithoutConclusion;
        if (screens == 0 || counts.Confirmed + counts.Refuted == 0) return [];
        var curve = DecisionCurve.Of(new DecisionCounts(counts.Confirmed, counts.Refuted, screens), Thresholds, work.Known.Confidence);
        double? infected = work.Draws.Centre[Parameter.Sensitivity] is > 0 and var sensitivity ? Math.Min((double)counts.Confirmed / screens / sensitivity, (double)(screens - counts.Refuted) / screens) : null;
        return [.. curve.Select(point => Row(point, infected))];
    }

    private static WorthDecisionPoint Row(DecisionPoint point, double? infected)
    {
        var everyone = infected is { } share ? DecisionCurve.Stated(share, 1, 1, [point.Threshold])[0].TreatAll.Value : null;
        var best = everyone is > 0 && everyone > (point.Screen.Value ?? 0) ? "everyone" : point.Screen.Value is > 0 ? "screen" : "no-one";
        return new WorthDecisionPoint(
            point.Threshold, new EstimateFinding(point.Screen.Value * PerScreens, null, point.Screen.Lower * PerScreens, point.Screen.Upper * PerScreens, DecisionCurve.CountsMethod, point.Screen.Confidence),
            everyone is { } value ? new EstimateFinding(value * PerScreens, null, null, null, DecisionCurve.Method, null) : EstimateFinding.Undefined(UndefinedReason.InfectedUnknown.Describe()), best);
    }
}
