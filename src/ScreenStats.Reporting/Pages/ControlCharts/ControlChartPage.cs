using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.ControlCharts;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages.ControlCharts;

/// <summary>Control charts of unusable runs and refuted positives.</summary>
internal static class ControlChartPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings)
    {
        var table = findings.ControlCharts.Table;
        ViewColumn point = "points_are";
        return new(
            "control-charts", "When was a rate other than usual?", findings.ControlCharts,
            "A point outside its limits says that something was different then, not what: a lot, a device, a person, a rule, or how results were entered. Limits come from these data, so a fault that was there all the time lies in the centre and not outside. Positives that nobody followed up cannot be refuted and make a period look better than it was.",
            "Unusable runs (inconclusive and invalid) of all runs, and refuted positives of valid tests, each period, lot or operator with limits for its own size. Limits stand where chance alone would put a point outside on either side with a chance of 0.00135 at most; they are widened only where points vary all over by more than chance. Where refuted positives are rare, what lies between one and the next is charted instead. Operators are compared in the files only: for training, not for discipline.")
        {
            Charts = ControlChartFigures.Of(findings),
            Tables =
            [
                new TableView(table.Only(row => (row.Kind is ChartKind.Share or ChartKind.MovingAverage) && Shown(row)), "Charts of shares and of their moving averages: the whole program, and sites with anything outside or in rows; the file has all",
                    [ViewColumn.Part, "measure", "kind", point, "points", "centre", "above", "below", new("in_patterns_above", "Rows of high ones"), new("in_patterns_below", "Rows of low ones"), "limits", "sigma_z"]),
                new TableView(table.Only(row => row.Kind is ChartKind.TestsBetween or ChartKind.DaysBetween), "Charts of what lies between refuted positives, in valid tests and in days",
                    [ViewColumn.Part, "kind", "points", "centre_between", new("below", "Too short"), new("above", "Too long"), new("in_patterns_below", "Rows of short ones"), new("in_patterns_above", "Rows of long ones")]),
                TableViews.Whole(findings.ControlCharts.PointTable.Only(row => row.Chart.Kind == ChartKind.Share && Shown(row.Chart))) with { Caption = "Points of the charts of shares: the whole program, and sites with anything outside or in rows; the file has all", Folded = true },
            ],
            Caution = "A point outside its limits says when to look, not whose result was wrong; a chart with nothing outside proves no result right.",
        };
    }

    private static bool Shown(ControlChartFinding chart) =>
        chart.By == Grouping.Program || chart.PointsAbove + chart.PointsBelow + chart.PatternsAbove + chart.PatternsBelow > 0 || chart.RunsSignal;
}
