using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Control charts in words.</summary>
internal static class ControlChartSentences
{
    private const int Named = 3;

    /// <summary>The summary: what was looked at, what stands out, what has no chart.</summary>
    public static ImmutableArray<Sentence> Of(ControlChartFindings findings)
    {
        if (findings.SharePoints == 0) return [new Sentence("There are too few runs, or none that could not be used, for a control chart.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "{0} of {1} points (periods, lots and operators) lie outside their limits, where chance alone would put about {2}.",
            Figure.Count("controlCharts.sharePointsOutside", findings.SharePointsOutside),
            Figure.Count("controlCharts.sharePoints", findings.SharePoints),
            Figure.Number("controlCharts.sharePointsOutsideByChance", findings.SharePointsOutsideByChance, Unit.Ratio)));
        foreach (var chart in Leading(findings.Charts).Take(Named)) sentences.Add(chart.Sentence);
        if (findings.PlacesWithFewRuns > 0)
            sentences.Add(new Sentence(
                $"{{0}} {Figure.Plural(findings.PlacesWithFewRuns, "chart of a site is", "charts of sites are")} left out for fewer than {Say(ChartRules.FewestPeriods)} periods or fewer than {Say(ChartRules.FewestEvents)} events.",
                Figure.Count("controlCharts.placesWithFewRuns", findings.PlacesWithFewRuns)));
        if (findings.PlacesBeyondMost > 0)
            sentences.Add(new Sentence(
                $"Of each kind the {Say(ChartRules.MostPlaces)} that vary most are made; {{0}} more could be.",
                Figure.Count("controlCharts.placesBeyondMost", findings.PlacesBeyondMost)));
        return sentences.ToImmutable();
    }

    /// <summary>The charts over time and of lots that say most, those with the largest share of points above first.</summary>
    public static IEnumerable<ControlChartFinding> Leading(IEnumerable<ControlChartFinding> charts) => charts
        .Where(chart => chart.Kind == ChartKind.Share && (chart.InOrder || chart.PointsAre == PointKind.Lot) && chart.PointsAbove > 0)
        .OrderByDescending(chart => (double)chart.PointsAbove / chart.PointCount).ThenBy(chart => chart.Id, Levels.Order);

    /// <summary>One chart in one plain sentence.</summary>
    public static Sentence Of(ControlChartFinding chart)
    {
        var path = FigurePath.Row("controlCharts.charts", chart.Id);
        var figures = new List<FigureReference>();
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return $"{{{Say(figures.Count - 1)}}}";
        }

        string Count(string property, long value) => Add(Figure.Count($"{path}.{property}", value));
        var name = chart.By == Grouping.Program ? "Whole program" : (chart.By == Grouping.Lot ? "Lot " : "") + Add(Figure.Name(path + ".level", chart.Level));
        var counted = ChartWords.Counted(chart.Measure);
        if (chart.CentreUndefined is { } reason) return new Sentence($"{name}: no limits for {counted}, because {reason}.", [.. figures]);
        var text = chart.Kind switch
        {
            ChartKind.TestsBetween or ChartKind.DaysBetween => Between(chart, Count),
            ChartKind.MovingAverage => Average(chart, counted, Count, Add, path),
            _ => Shares(chart, counted, Count, Add, path),
        };
        text += Patterns(chart, Count);
        if (chart.RunsSignal) text += $"; runs about the median ({Count("longestRun", chart.LongestRun ?? 0)} in a row at most, {Count("crossings", chart.Crossings ?? 0)} crossings) speak of a shift or a drift";
        if (chart.PointsIncomplete > 0)
            text += $"; {Count("pointsIncomplete", chart.PointsIncomplete)} of the last {Figure.Plural(chart.PointsIncomplete, "is", "are")} not complete, since positives still wait for a result";
        return new Sentence($"{name}: {text}.", [.. figures]);
    }

    /// <summary>Rows of points on one side. Where the centre is that of others, points on that side are what the sentence speaks of already.</summary>
    private static string Patterns(ControlChartFinding chart, Func<string, long, string> count)
    {
        var between = chart.Kind is ChartKind.TestsBetween or ChartKind.DaysBetween;
        var parts = new List<string>();
        if (between && chart.PatternsBelow > 0) parts.Add($"{count("patternsBelow", chart.PatternsBelow)} {Row(chart.PatternsBelow)} of short ones");
        if (chart.PatternsAbove > 0) parts.Add($"{count("patternsAbove", chart.PatternsAbove)} {Row(chart.PatternsAbove)} of {(between ? "long" : "high")} ones");
        if (!between && chart.PatternsBelow > 0) parts.Add($"{count("patternsBelow", chart.PatternsBelow)} {Row(chart.PatternsBelow)} of low ones");
        return parts.Count == 0 ? "" : $"; inside the limits {string.Join(" and ", parts)}, such as chance seldom makes";

        static string Row(int points) => Figure.Plural(points, "ends a row", "stand in rows");
    }

    private static string Shares(ControlChartFinding chart, string counted, Func<string, long, string> count, Func<FigureReference, string> add, string path)
    {
        var many = ChartWords.Many(chart.PointsAre);
        var (above, below) = (chart.PointsAbove, chart.PointsBelow);
        var limits = (chart.Limits == "widened" ? "the widened limits" : "the limits") + (chart.CentreFrom == "other-sites" ? " around the other sites' rate" : "");
        if (above + below == 0) return $"{counted} stay within {limits} in all {count("pointCount", chart.PointCount)} {many}";
        var inSide = chart.InOrder ? "in" : chart.PointsAre == PointKind.Site ? "at" : "with";
        var text = above == 0
            ? $"{counted} are never above {limits}, but below them {inSide} {count("pointsBelow", below)} of {count("pointCount", chart.PointCount)} {many}"
            : $"{counted} are above {limits} {inSide} {count("pointsAbove", above)} of {count("pointCount", chart.PointCount)} {many}"
                + (chart.PointsAre is PointKind.Lot or PointKind.Site ? Names(chart, add, path) : "")
                + (below > 0 ? $" and below them {inSide} {count("pointsBelow", below)}" : "");
        return text + (above + below < chart.PointCount ? "; the rest lie within" : "");
    }

    private static string Names(ControlChartFinding chart, Func<FigureReference, string> add, string path)
    {
        var outside = chart.Points.Where(point => point.Outside && point.Above).ToList();
        return outside.Count > Named ? "" : " (" + string.Join(", ", outside.Select(point => add(Figure.Name(FigurePath.Row(path + ".signalling", point.Name) + ".name", point.Name)))) + ")";
    }

    private static string Average(ControlChartFinding chart, string counted, Func<string, long, string> count, Func<FigureReference, string> add, string path)
    {
        var many = ChartWords.Many(chart.PointsAre);
        var own = chart.By == Grouping.Program ? "" : " around the site's own rate";
        if (chart.PointsAbove == 0)
        {
            return chart.PointsBelow == 0
                ? $"the moving average of {counted}{own} stays within limits in all {count("pointCount", chart.PointCount)} {many}: no lasting shift"
                : $"the moving average of {counted}{own} is never above the limits, but below them in {count("pointsBelow", chart.PointsBelow)} of {count("pointCount", chart.PointCount)} {many}";
        }

        var first = chart.Points.First(point => point.Outside && point.Above);
        return $"the moving average of {counted}{own} is above the limits in {count("pointsAbove", chart.PointsAbove)} of {count("pointCount", chart.PointCount)} {many}, "
            + $"first in that from {add(Figure.Day(FigurePath.Row(path + ".signalling", first.Name) + ".periodStart", first.PeriodStart))}"
            + (chart.PointsBelow > 0 ? $", and below them in {count("pointsBelow", chart.PointsBelow)}" : "");
    }

    private static string Between(ControlChartFinding chart, Func<string, long, string> count)
    {
        var unit = chart.Kind == ChartKind.TestsBetween ? "valid tests" : "days";
        var text = $"of {count("pointCount", chart.PointCount)} stretches of {unit} from one refuted positive to the next ";
        if (chart.PointsBelow + chart.PointsAbove == 0) return text + "none is outside the limits";
        return text + (chart.PointsBelow > 0 ? $"{count("pointsBelow", chart.PointsBelow)} {Figure.Plural(chart.PointsBelow, "is", "are")} shorter than the limits allow" : "none is shorter than the limits allow")
            + (chart.PointsAbove > 0 ? $" and {count("pointsAbove", chart.PointsAbove)} longer" : "");
    }

    private static string Say(long value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
