using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.MovingAverages;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Charts of shares, and of their moving averages.</summary>
internal static class ShareCharts
{
    private const string TooFewPoints = "there are fewer than two complete points, so limits taken from them would say nothing";
    private const string NoEvent = "none was seen, so limits taken from the points would say nothing";
    private const string OnlyForProgram = "computed for the charts of the whole program by period; that of each rule stands beside it";

    /// <summary>The chart of the shares. Periods are in order, so all rules apply; lots and operators are side by side, so only the limits do.</summary>
    public static ControlChartFinding Of(ChartSeries series, ControlLimits wanted)
    {
        var rules = series.InOrder ? RunRules.All : [RunRule.OutsideLimits];
        var complete = series.Points.Where(point => !point.Incomplete).ToList();
        if (Undefined(complete) is { } reason) return Plain(series, ChartKind.Share, reason);

        Subgroup[] points = [.. series.Points.Select(Group)];
        var centre = series.Centre ?? (complete.Count == points.Length ? null : Rate(complete));
        var check = Overdispersion.Check(complete.Select(Group), series.Centre);
        var widen = check.Demanded && (series.InOrder || complete.Count >= ChartRules.FewestForWidened);
        var chart = widen ? OverdispersedChart.Of(points, centre, rules: rules)
            : wanted == ControlLimits.ThreeSigma ? ProportionChart.ThreeSigma(points, centre, rules)
            : ProportionChart.Exact(points, centre, rules: rules);
        var finding = Plain(series, ChartKind.Share, chart.Reason?.Describe()) with
        {
            Centre = chart.Reason is null ? chart.Centre : null,
            Limits = widen ? "widened" : wanted == ControlLimits.ThreeSigma ? "three-sigma" : "exact",
            Method = widen ? MonitoringNotes.Widened : wanted == ControlLimits.ThreeSigma ? MonitoringNotes.ThreeSigma : MonitoringNotes.Exact,
            Why = Why(check, widen, wanted, series.PointsAre),
            CentreFrom = series.CentreFrom,
            DispersionP = check.PValue,
            SigmaZ = chart.Widening ?? check.Widening,
            Points = [.. chart.Points.Select((point, index) => Point(series.Points[index], point))],
        };
        return chart.Reason is not null ? finding : WithRuns(WithLengths(finding, chart, rules, series.By == Grouping.Program));
    }

    /// <summary>The moving average of the complete points; its limits are widened where those of the shares are.</summary>
    public static ControlChartFinding Average(ChartSeries series, ControlChartFinding shares)
    {
        var complete = series.Points.Where(point => !point.Incomplete).ToImmutableArray();
        if (Undefined(complete) is { } reason) return Plain(series, ChartKind.MovingAverage, reason);
        var widening = shares.Limits == "widened" ? Math.Max(1, shares.SigmaZ ?? 1) : 1;
        var chart = MovingAverageChart.Proportions(complete.Select(Group), weight: ChartRules.AverageWeight, width: ChartRules.AverageWidth * widening);
        var finding = Plain(series, ChartKind.MovingAverage, chart.Reason?.Describe()) with
        {
            Centre = chart.Reason is null ? chart.Centre : null,
            Limits = widening > 1 ? "moving-average-widened" : "moving-average",
            Method = MonitoringNotes.MovingAverage,
            Why = "an average that leans on the last points sees a small lasting shift which no single point shows" + (widening > 1 ? "; its limits are widened as those of the shares are" : ""),
            SigmaZ = shares.SigmaZ,
            Points = [.. chart.Points.Select((point, index) => Point(complete[index], point))],
        };
        if (chart.Reason is not null) return finding;
        return finding with { Rules = [new RuleFinding(RunRule.OutsideLimits, chart.Signals.Length, ChartRules.AverageRunLength, null)], RunLength = ChartRules.AverageRunLength };
    }

    private static string? Undefined(IReadOnlyCollection<SeriesPoint> complete) =>
        complete.Count < 2 ? TooFewPoints
        : complete.All(point => point.Events == 0) ? NoEvent
        : complete.All(point => point.Events == point.Trials) ? "all were, so limits taken from the points would say nothing"
        : null;

    private static ControlChartFinding Plain(ChartSeries series, ChartKind kind, string? undefined) => new()
    {
        Id = Id(series.Measure, kind, series.PointsAre, series.By, series.Level),
        Measure = series.Measure,
        Kind = kind,
        By = series.By,
        Level = series.Level,
        PointsAre = series.PointsAre,
        Limits = "none",
        Method = MonitoringNotes.Exact,
        Why = undefined ?? "",
        Centre = null,
        CentreUndefined = undefined,
        RunLengthUndefined = undefined,
        Points = [.. series.Points.Select(point => new ChartPointFinding(
            point.Name, point.Start, point.Trials, point.Events, (double)point.Events / point.Trials, (double)point.Events / point.Trials, null, null, null, null, [], false, point.Incomplete))],
    };

    /// <summary>The name of a chart among all.</summary>
    public static string Id(ChartMeasure measure, ChartKind kind, PointKind points, Grouping by, string level) =>
        $"{ChartWords.Of(measure)}/{ChartWords.Of(kind)}/{ChartWords.Of(points)}" + (by == Grouping.Program ? "" : $"/{Model.LevelNames.Of(by)}/{level}");

    private static ChartPointFinding Point(SeriesPoint counted, ChartPoint point)
    {
        var above = point.Side == ChartSide.Above;
        // What still waits can only add refuted positives: a point that lies above already is judged, one that lies low is not.
        ImmutableArray<RunRule> signals = !counted.Incomplete ? point.Signals
            : above && point.Signals.Contains(RunRule.OutsideLimits) ? [RunRule.OutsideLimits] : [];
        return new ChartPointFinding(
            counted.Name, counted.Start, counted.Trials, counted.Events, point.Observed!.Value, point.Value!.Value,
            point.Centre, point.Lower, point.Upper, point.Score, signals, above, counted.Incomplete);
    }

    private static ControlChartFinding WithLengths(ControlChartFinding finding, ControlChart chart, IReadOnlyList<RunRule> rules, bool together)
    {
        var centre = chart.Centre!.Value;
        var sizes = chart.Points.Select(point => point.Trials!.Value).Order().ToArray();
        var size = sizes[sizes.Length / 2];
        Estimate Length(IReadOnlyList<RunRule> of) => chart.Limits switch
        {
            ChartLimits.Probability => RunRuleLength.Proportion(of, size, centre, centre),
            ChartLimits.ThreeSigma when of is [RunRule.OutsideLimits] => ShewhartRunLength.Proportion(size, centre, centre, ChartLimits.ThreeSigma),
            _ => RunRuleLength.Normal(of),
        };
        var each = rules.Select(rule => (Rule: rule, Length: Length([rule]))).ToList();
        var all = rules.Count == 1 ? each[0].Length : together ? Length(rules) : (Estimate?)null;
        return finding with
        {
            Rules = [.. each.Select(entry => new RuleFinding(
                entry.Rule, finding.Points.Count(point => point.Signals.Contains(entry.Rule)), entry.Length.Value, entry.Length.Reason?.Describe()))],
            RunLength = all?.Value,
            RunLengthUndefined = all is null ? OnlyForProgram : all.Reason?.Describe(),
        };
    }

    private static ControlChartFinding WithRuns(ControlChartFinding finding)
    {
        if (!finding.InOrder) return finding;
        var runs = RunsAndCrossings.Of(finding.Points.Where(point => !point.Incomplete).Select(point => point.Estimate));
        return finding with
        {
            LongestRun = runs.LongestRun,
            LongestRunLimit = runs.LongestRunLimit,
            Crossings = runs.Crossings,
            CrossingsLimit = runs.CrossingsLimit,
            RunsChance = runs.Chances?.Either,
        };
    }

    private static string Why(OverdispersionCheck check, bool widen, ControlLimits wanted, PointKind points)
    {
        var many = ChartWords.Many(points);
        var text = widen ? $"{many} vary by more than chance, and not at a few of them only, so that limits from chance alone would mark half of them"
            : check.Demanded ? $"{many} vary by more than chance, but there are too few side by side to widen the limits by: one outside differs from all together, which need not be a fault"
            : check.PValue is not { } p ? $"whether {many} vary by more than chance cannot be told"
            : p >= Overdispersion.Level ? $"{many} vary no more than chance explains"
            : check.Widening <= 1 ? $"{many} do not jump from one to the next; where they drift, that is to be seen and is no reason for wider limits"
            : $"only a few {many} vary by more than chance, and those must not widen the limits that ought to show them";
        return wanted == ControlLimits.ThreeSigma && !widen ? text + "; three-sigma limits as the program file asks" : text;
    }

    private static Subgroup Group(SeriesPoint point) => new(point.Events, point.Trials);

    private static double Rate(IReadOnlyCollection<SeriesPoint> points) => (double)points.Sum(point => point.Events) / points.Sum(point => point.Trials);
}
