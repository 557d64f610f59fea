namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>A point with the chart it belongs to, as a row of a table.</summary>
/// <param name="Chart">The chart.</param>
/// <param name="Point">The point.</param>
public sealed record ChartPointRow(ControlChartFinding Chart, ChartPointFinding Point);
