using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts;

/// <summary>A proportion by level (lot, site), with limits, against the whole program.</summary>
internal static class LevelChart
{
    /// <summary>More levels than this are not drawn; those that stand out most are.</summary>
    public const int Most = 40;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Levels with a defined proportion; at least one.</param>
    /// <param name="whole">The proportion of the whole program, or null.</param>
    /// <param name="levels">What the levels are, in the plural: "lots".</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> points, double? whole, string levels)
    {
        var shown = Shown(points);
        var (ownEdge, ownTop) = Ends(shown, whole);
        return Of(frame, points, shown, whole, levels, ownEdge, ownTop) with
        {
            // Words stand beside a flagged interval: where they would not, it is cut before the edge.
            Scale = ChartScale.Of(frame, ownTop, top => Of(frame, points, shown, whole, levels, Math.Max(ownEdge, FlaggedEnd(shown, top) * WordRoom > top ? top / WordRoom : top / Margin), top)),
        };
    }

    private const double Margin = 1.02;
    private const double WordRoom = 1.3;

    private static double FlaggedEnd(ImmutableArray<ChartPoint> shown, double edge) => shown.Where(point => point.Flagged).Select(point => Math.Min(point.Upper, edge)).DefaultIfEmpty(0).Max();

    private static (double Edge, double Top) Ends(ImmutableArray<ChartPoint> shown, double? whole)
    {
        var solid = shown.Where(point => !point.Few || point.Flagged).ToArray();
        var highest = Math.Max(whole ?? 0, (solid.Length > 0 ? solid : [.. shown]).Max(point => point.Estimate));
        var reach = Math.Max(highest, Math.Min((solid.Length > 0 ? solid : [.. shown]).Max(point => point.Upper), highest > 0 ? PeriodChart.Reach * highest : 1));
        var edge = reach > 0 ? Math.Min(1, reach * 1.03) : 0.01;
        // Room for the words beside a flagged interval, which stand to the right of its upper limit.
        return (edge, Math.Max(edge * Margin, FlaggedEnd(shown, edge) * WordRoom));
    }

    private static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> points, ImmutableArray<ChartPoint> shown, double? whole, string levels, double edge, double top)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        if (whole is { } rule) marks.Add(new RuleMark(rule, Upright: true));
        for (var index = 0; index < shown.Length; index++) Add(marks, shown[index], shown.Length - 1 - index, edge);
        if (whole is { } value)
        {
            var side = value > top * 0.6 ? LabelSide.Left : LabelSide.Right;
            marks.Add(new LabelMark(value, shown.Length - 0.1, "whole program " + Rounding.Print(Cell.Number(value), Unit.Proportion), side, Tone.Quiet));
        }

        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(points, shown, edge, levels), frame.Description, frame.TableId,
            new Axis("", -0.012 * top, top, [.. Ticks.PerCent(Math.Min(top, 1))]),
            new Axis("", -0.7, shown.Length + 0.35, [.. shown.Select((point, index) => new Tick(shown.Length - 1 - index, ChartText.Name(point.Name)) { Level = point.Name })], Lines: false),
            marks.ToImmutable(), 74 + (26 * (shown.Length + 1)));
    }

    /// <summary>The levels that are drawn: all in order of their estimate, or where there are too many the flagged ones and those with the highest lower limits.</summary>
    public static ImmutableArray<ChartPoint> Shown(ImmutableArray<ChartPoint> points)
    {
        var chosen = points.Length <= Most
            ? points.AsEnumerable()
            : points.OrderByDescending(point => point.Flagged).ThenByDescending(point => point.Lower).ThenBy(point => point.Name, StringComparer.Ordinal).Take(Most);
        return [.. chosen.OrderByDescending(point => point.Estimate).ThenBy(point => point.Name, StringComparer.Ordinal)];
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, ChartPoint point, double at, double edge)
    {
        var tone = point.Flagged ? Tone.Alert : Tone.Main;
        var faded = point.Few && tone == Tone.Main;
        if (point.Estimate > edge)
        {
            marks.Add(new LabelMark(edge, at, $"beyond: {Rounding.Print(Cell.Number(point.Estimate), Unit.Proportion)} of {point.Denominator.ToString(CultureInfo.InvariantCulture)}", LabelSide.Left, Tone.Quiet));
            return;
        }

        marks.Add(new IntervalMark(at, point.Estimate, point.Lower, Math.Min(point.Upper, edge), Upright: false, tone, faded, point.Upper > edge));
        if (point.Flagged) marks.Add(new LabelMark(Math.Min(point.Upper, edge), at, "flagged", LabelSide.Right, Tone.Alert, Strong: true));
    }

    private static Caption Reading(ImmutableArray<ChartPoint> points, ImmutableArray<ChartPoint> shown, double edge, string levels)
    {
        var text = " Dot: estimate. Line: its limits.";
        if (shown.Any(point => point.Flagged)) text += " Diamond: flagged.";
        if (shown.Any(point => point.Few)) text += $" Hollow and pale: fewer than {ChartPoint.FewBelow} runs.";
        if (shown.Any(point => point.Upper > edge && point.Estimate <= edge)) text += " Lines with an arrow head go on beyond the edge.";
        return shown.Length == points.Length ? text : (Caption)text + new Sentence(
            "Shown are the {0} of {1} " + levels + " that stand out most (flagged, then the highest lower limits); the table has all.", Caption.Drawn(shown.Length), Caption.Drawn(points.Length));
    }
}
