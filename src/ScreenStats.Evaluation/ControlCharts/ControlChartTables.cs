using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>The tables of control charts and of their points.</summary>
internal static class ControlChartTables
{
    public static Table<ControlChartFinding> Charts(ImmutableArray<ControlChartFinding> charts) => new(
        "control-charts",
        "Control charts of unusable runs and refuted positives",
        "One row for each chart: what it watches, its limits and why these, what lies outside, the patterns that chance seldom makes, and how often each rule fires where nothing is wrong. Its points stand in control-chart-points.",
        [
            new("chart", "Chart", Unit.Text, "What tells the chart from the others.", row => Cell.Text(row.Id)),
            new("measure", "Watched", Unit.Text, "invalid-runs: inconclusive and invalid runs of all runs; refuted: refuted positive runs of valid tests.", row => Cell.Text(ChartWords.Of(row.Measure))),
            new("kind", "Kind", Unit.Text, "share of each point, moving-average of the shares, tests-between or days-between refuted positives.", row => Cell.Text(ChartWords.Of(row.Kind))),
            LevelColumns.By<ControlChartFinding>(row => row.By),
            LevelColumns.Level<ControlChartFinding>(row => row.Level),
            new("points_are", "Point", Unit.Text, "What each point is.", row => Cell.Text(ChartWords.Of(row.PointsAre))),
            new("points", "Points", Unit.Count, "Points with a value.", row => Cell.Count(row.PointCount)),
            new("incomplete", "Incomplete", Unit.Count, "Points with positives that still wait for a result; they are judged only for more refuted positives than the limits allow.", row => Cell.Count(row.PointsIncomplete)),
            new("centre", "Centre", Unit.Proportion, "The share that the limits stand around.", row => Between(row) ? Cell.Empty : Cell.NumberOr(row.Centre, row.CentreUndefined ?? "")),
            new("centre_between", "Mean between", Unit.Ratio, "The mean of valid tests, or of days, between refuted positives.", row => Between(row) ? Cell.NumberOr(row.Centre, row.CentreUndefined ?? "") : Cell.Empty),
            new("centre_from", "Centre from", Unit.Text, "What the centre is the rate of: own, these points; other-sites, the other sites that are not flagged, without flagged lots; unflagged, those of the sites, lots or operators side by side that are not flagged.", row => row.Centre is null ? Cell.Empty : Cell.Text(row.CentreFrom)),
            new("limits", "Limits", Unit.Text, "How the limits were made.", row => Cell.Text(row.Limits)),
            new("why", "Why these", Unit.Text, "Why these limits.", row => Cell.Text(row.Why)),
            new("dispersion_p", "Chance of such variation", Unit.PValue, "The chance of points that vary as much if all had one rate; empty where it was not looked at.", row => row.DispersionP is { } p ? Cell.Number(p) : Cell.Empty) { Method = MonitoringNotes.Dispersion },
            new("sigma_z", "Variation", Unit.Ratio, "How many times the points vary from one to the next what chance makes them.", row => row.SigmaZ is { } z ? Cell.Number(z) : Cell.Empty) { Method = MonitoringNotes.Widened },
            new("above", "Above", Unit.Count, "Points above the upper limit.", row => Cell.Count(row.PointsAbove)),
            new("below", "Below", Unit.Count, "Points below the lower limit.", row => Cell.Count(row.PointsBelow)),
            .. RunRules.All.Select(rule => new Column<ControlChartFinding>(Column(rule), Heading(rule), Unit.Count, $"Points completing the rule: {rule.Describe()}. Empty where it is not in force.", row =>
                Find(row, rule) is { } found ? Cell.Count(found.Signals) : Cell.Empty)),
            new("in_patterns_above", "Patterns above", Unit.Count, "Points above the centre and inside the limits at which one of the other rules fired.", row => Cell.Count(row.PatternsAbove)),
            new("in_patterns_below", "Patterns below", Unit.Count, "The same below the centre.", row => Cell.Count(row.PatternsBelow)),
            new("longest_run", "Longest run", Unit.Count, "The longest run of points on one side of their median.", row => row.LongestRun is { } run ? Cell.Count(run) : Cell.Empty),
            new("longest_run_limit", "Longest usual", Unit.Count, "The longest run that is no signal.", row => row.LongestRunLimit is { } run ? Cell.Count(run) : Cell.Empty),
            new("crossings", "Crossings", Unit.Count, "How often the line crosses the median.", row => row.Crossings is { } number ? Cell.Count(number) : Cell.Empty),
            new("crossings_limit", "Fewest usual", Unit.Count, "The fewest crossings that are no signal.", row => row.CrossingsLimit is { } number ? Cell.Count(number) : Cell.Empty),
            new("runs_chance", "Chance of such a signal", Unit.Proportion, "The chance that runs or crossings signal where nothing is wrong.", row => row.RunsChance is { } chance ? Cell.Number(chance) : Cell.Empty) { Method = MonitoringNotes.Runs },
            new("run_length", "Points between false alarms", Unit.Ratio, "On average, by all rules in force together; for the median size of the points.", row => Length(row.RunLength, row.RunLengthUndefined)) { Method = MonitoringNotes.RunLength },
            .. RunRules.All.Select(rule => new Column<ControlChartFinding>("run_length_" + Column(rule), Heading(rule) + ": between false alarms", Unit.Ratio, "Points from one false alarm of this rule alone to the next, on average.", row =>
                Find(row, rule) is { } found ? Length(found.RunLength, found.RunLengthUndefined) : Cell.Empty)
            { Method = MonitoringNotes.RunLength }),
            new("sentence", "In words", Unit.Text, "The chart in words.", row => Cell.Text(row.Sentence.Text)),
            new("method", "Method", Unit.Text, "The method of the limits.", row => Cell.Text(row.Method)),
        ],
        charts);

    public static Table<ChartPointRow> Points(ImmutableArray<ControlChartFinding> charts) => new(
        "control-chart-points",
        "Points of the control charts",
        "One row for each point of each chart, with its own limits. Figures are shares for charts of shares and averages, valid tests or days for those of what lies between refuted positives.",
        [
            new("chart", "Chart", Unit.Text, "The chart the point belongs to.", row => Cell.Text(row.Chart.Id)),
            new("point", "Point", Unit.Text, "First day of the period, lot, operator, or the number of the refuted positive that ends the stretch.", row => Cell.Text(row.Point.Name)),
            new("period_start", "From", Unit.Date, "First day of the period or of the lot's use; day of the refuted positive.", row => Cell.Date(row.Point.PeriodStart)),
            new("trials", "Trials", Unit.Count, "Runs or valid tests.", row => row.Point.Trials is { } trials ? Cell.Count(trials) : Cell.Empty),
            new("events", "Events", Unit.Count, "Unusable runs or refuted positives.", row => row.Point.Events is { } events ? Cell.Count(events) : Cell.Empty),
            new("estimate", "Seen", Unit.Ratio, "What was seen.", row => Cell.Number(row.Point.Estimate)),
            new("plotted", "Held against the limits", Unit.Ratio, "The same, or the moving average up to the point.", row => Cell.Number(row.Point.Plotted)),
            new("centre", "Centre", Unit.Ratio, "The centre at the point; of what lies between, the median by chance.", row => Number(row, row.Point.Centre)),
            new("lower", "Lower limit", Unit.Ratio, "The lower limit, itself inside.", row => Number(row, row.Point.Lower)),
            new("upper", "Upper limit", Unit.Ratio, "The upper limit, itself inside.", row => Number(row, row.Point.Upper)),
            new("score", "Score", Unit.Ratio, "How far from the centre, as a standard normal variable would lie.", row => Number(row, row.Point.Score)),
            new("signals", "Rules that fired", Unit.Text, "Rules that fired at the point, joined by semicolons.", row => row.Point.Signals.IsEmpty ? Cell.Empty : Cell.Text(string.Join(';', row.Point.Signals.Select(RunRules.Name)))),
            new("incomplete", "Incomplete", Unit.Text, "yes where positives still wait for a result.", row => row.Point.Incomplete ? Cell.Text("yes") : Cell.Empty),
            new("method", "Method", Unit.Text, "The method of the limits.", row => Cell.Text(row.Chart.Method)),
        ],
        [.. charts.SelectMany(chart => chart.Points.Select(point => new ChartPointRow(chart, point)))]);

    private static bool Between(ControlChartFinding chart) => chart.Kind is ChartKind.TestsBetween or ChartKind.DaysBetween;

    private static RuleFinding? Find(ControlChartFinding chart, RunRule rule) => chart.Rules.FirstOrDefault(found => found.Rule == rule);

    private static Cell Number(ChartPointRow row, double? value) => Cell.NumberOr(value, row.Chart.CentreUndefined ?? "the chart has no limits");

    private static Cell Length(double? value, string? undefined) => Cell.NumberOr(value, undefined ?? "the chart has no limits");

    private static string Column(RunRule rule) => rule.Name().Replace('-', '_');

    private static string Heading(RunRule rule)
    {
        var words = rule.Name().Replace('-', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }
}
