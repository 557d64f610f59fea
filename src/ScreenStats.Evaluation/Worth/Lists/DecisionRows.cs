using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Economics.Decision;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>The decision curve from the counts of the program: of all screens with a conclusion, and without those of flagged lots.</summary>
internal static class DecisionRows
{
    private const double PerScreens = 1_000;

    private static readonly double[] Thresholds = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

    public static ImmutableArray<WorthDecisionPoint> Of(Tally tally, CadenceWork work, IReadOnlySet<string> flagged)
    {
        if (!tally.Cells.HasConfirmatory) return [];
        var all = Curve(tally.Cells.Screens, work);
        var without = tally.Cells.Screens.Any(cell => flagged.Contains(cell.Lot)) ? Curve(tally.Cells.Screens.Where(cell => !flagged.Contains(cell.Lot)), work) : [];
        return [.. all.Select((choice, place) => new WorthDecisionPoint(Thresholds[place], choice.Screened, choice.Everyone, choice.Best) { WithoutFlaggedLots = without.IsEmpty ? null : without[place] })];
    }

    // Empty where no screen has a conclusion.
    private static ImmutableArray<WorthDecisionChoice> Curve(IEnumerable<ScreenCell> cells, CadenceWork work)
    {
        var (found, alarmed) = (new ClusterCounter(), new ClusterCounter());
        foreach (var cell in cells)
        {
            if (cell is not ({ Outcome: Outcome.Negative } or { Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed or FollowUp.Refuted })) continue;
            found.Add(cell.Site, cell.Day, cell.Runs, cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed } ? cell.Runs : 0);
            alarmed.Add(cell.Site, cell.Day, cell.Runs, cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted } ? cell.Runs : 0);
        }

        if (found.Events + alarmed.Events == 0) return [];
        var confidence = work.Known.Confidence;
        double? infected = work.Draws.Centre[Parameter.Sensitivity] is > 0 and var sensitivity
            ? Math.Min((double)found.Events / found.Trials / sensitivity, (double)(found.Trials - alarmed.Events) / found.Trials) : null;
        return [.. DecisionCurve.Widened(Widened(found), Widened(alarmed), Thresholds).Select(point => Choice(point, infected))];

        WidenedEstimate Widened(ClusterCounter counter)
        {
            var share = counter.Proportion(confidence);
            return WidenedInterval.Wilson(share.Events, share.Trials, share.DesignEffect, share.Clusters ?? 0, confidence);
        }
    }

    private static WorthDecisionChoice Choice(DecisionPoint point, double? infected)
    {
        var everyone = infected is { } share ? DecisionCurve.Stated(share, 1, 1, [point.Threshold])[0].TreatAll.Value : null;
        var best = everyone is > 0 && everyone > (point.Screen.Value ?? 0) ? "everyone" : point.Screen.Value is > 0 ? "screen" : "no-one";
        return new WorthDecisionChoice(
            new EstimateFinding(point.Screen.Value * PerScreens, null, point.Screen.Lower * PerScreens, point.Screen.Upper * PerScreens, DecisionCurve.WidenedMethod, point.Screen.Confidence),
            everyone is { } value ? new EstimateFinding(value * PerScreens, null, null, null, DecisionCurve.Method, null) : EstimateFinding.Undefined(UndefinedReason.InfectedUnknown.Describe()), best);
    }
}
