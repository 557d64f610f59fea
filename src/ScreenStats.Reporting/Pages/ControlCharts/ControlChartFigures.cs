using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.ControlCharts;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.ControlCharts;

/// <summary>Pictures of the control charts that say most: the whole program over time, the sites and the lots that stand out.</summary>
internal static class ControlChartFigures
{
    private const int Named = 5;

    /// <summary>At most five: each measure of the program over time, each measure of the site that lies outside most often, and the lots where one lies outside.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        if (findings.Disclosure is not null) return [];
        var charts = findings.ControlCharts.Charts.Where(chart => chart.Kind == ChartKind.Share && chart.Centre is not null && chart.PointCount > 1).ToList();
        var drawn = new List<ControlChartFinding>();
        foreach (var measure in Enum.GetValues<ChartMeasure>())
        {
            drawn.AddRange(charts.Where(chart => chart.Measure == measure && chart.By == Grouping.Program && chart.InOrder));
            drawn.AddRange(charts.Where(chart => chart.Measure == measure && chart.By == Grouping.Site && chart.PointsAbove > 0)
                .OrderByDescending(chart => chart.PointsAbove).ThenByDescending(Farthest).ThenBy(chart => chart.Level, StringComparer.Ordinal).Take(1));
        }

        drawn.AddRange(charts.Where(chart => chart.PointsAre == PointKind.Lot && chart.PointsAbove > 0).OrderByDescending(Farthest).Take(1));
        return [.. drawn.Select(Draw)];
    }

    private static double Farthest(ControlChartFinding chart) => chart.Points.Max(point => point.Score ?? 0);

    private static Chart Draw(ControlChartFinding chart)
    {
        var points = chart.Points.Where(point => point is { Lower: not null, Upper: not null }).Select(point => new LimitPoint(
            point.Name, point.PeriodStart ?? default, End(chart.PointsAre, point.PeriodStart ?? default), point.Plotted, point.Lower!.Value, point.Upper!.Value,
            point.Outside, !point.Outside && point.Signals.Length > 0, point.Incomplete)).ToImmutableArray();
        var (one, many) = Words(chart.PointsAre);
        var counted = chart.Measure == ChartMeasure.InvalidRuns ? "Unusable runs" : "Refuted positives";
        var place = chart.By == Grouping.Site ? $" at {ChartText.Name(chart.Level)}" : "";
        var outside = points.Where(point => point.Outside).ToList();
        var frame = new ChartFrame(
            $"control-chart-{(chart.Measure == ChartMeasure.InvalidRuns ? "invalid-runs" : "refuted")}-by-{one}{(chart.By == Grouping.Site ? "-at-site" : "")}",
            $"{counted} by {one}{place}, with limits",
            chart.Sentence,
            $"{counted} of {(chart.Measure == ChartMeasure.InvalidRuns ? "all runs" : "valid tests")}: {points.Length} {many}{place}, each with limits for its size around {Print(chart.Centre!.Value)}. "
            + (outside.Count == 0 ? "None lies outside." : $"Outside: {string.Join(", ", outside.Take(Named).Select(point => $"{ChartText.Name(point.Name)} with {Print(point.Value)}"))}{(outside.Count > Named ? string.Create(CultureInfo.InvariantCulture, $" and {outside.Count - Named} more") : "")}."),
            "control-chart-points") { Quantity = chart.Measure == ChartMeasure.InvalidRuns ? "unusable runs" : "refuted positives among valid tests" };
        var around = chart.CentreFrom switch { "other-sites" => "other sites", "unflagged" => $"{many} not flagged", _ => chart.InOrder ? "whole span" : "all together" };
        return (chart.InOrder ? LimitChart.OverTime(frame, points, chart.Centre!.Value, around, (one, many)) : LimitChart.SideBySide(frame, points, chart.Centre!.Value, around)) with { Levels = chart.PointsAre == PointKind.Lot ? ChartLevels.Lot : ChartLevels.Other };
    }

    private static DateOnly End(PointKind points, DateOnly start) => points switch
    {
        PointKind.Week => start.AddDays(7),
        PointKind.Month => start.AddMonths(1),
        _ => start == default ? start : start.AddDays(1),
    };

    private static (string One, string Many) Words(PointKind points) => points switch
    {
        PointKind.Day => ("day", "days"),
        PointKind.Week => ("week", "weeks"),
        PointKind.Month => ("month", "months"),
        _ => ("lot", "lots"),
    };

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
