using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Levels;

/// <summary>A proportion by level on a scale from nothing to all, each with its limits and below them, thinner, its bounds; against the whole program.</summary>
internal static class BoundedChart
{
    /// <summary>How far below its limits the bounds of a level are drawn, in rows.</summary>
    public const double Below = 0.3;

    private const int Row = 32;

    // Where a word beside what ends there has room.
    private const double RoomRight = 0.84;
    private const double RoomLeft = 0.2;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Levels with a defined proportion; at least one.</param>
    /// <param name="whole">The proportion of the whole program, or null.</param>
    /// <param name="levels">What the levels are, in the plural: "lots".</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<BoundedPoint> points, double? whole, string levels)
    {
        var shown = Shown(points);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        // The word beside a flagged level: right of its limits, or left, or where neither has room the axis is made longer.
        var longer = shown.Any(point => point.Point.Flagged && point.Upper > RoomRight && point.Lower < RoomLeft);
        if (whole is { } rule) marks.Add(new RuleMark(rule, Upright: true));
        for (var index = 0; index < shown.Length; index++) Add(marks, shown[index], shown.Length - 1 - index, longer);
        if (whole is { } value) marks.Add(new LabelMark(value, shown.Length - 0.1, "whole program " + Rounding.Print(Cell.Number(value), Unit.Proportion), value > 0.6 ? LabelSide.Left : LabelSide.Right, Tone.Quiet));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(points, shown, levels), frame.Description, frame.TableId,
            new Axis("", -0.012, longer ? 1.22 : 1.02, Ticks.PerCent(1)),
            new Axis("", -0.7, shown.Length + 0.35, [.. shown.Select((point, index) => new Tick(shown.Length - 1 - index, ChartText.Name(point.Point.Name)) { Level = point.Point.Name })], Lines: false),
            marks.ToImmutable(), 74 + (Row * (shown.Length + 1)));
    }

    // From the lowest down; where there are too many, the flagged ones and those whose upper limit is lowest.
    private static ImmutableArray<BoundedPoint> Shown(ImmutableArray<BoundedPoint> points)
    {
        var chosen = points.Length <= LevelChart.Most
            ? points.AsEnumerable()
            : points.OrderByDescending(point => point.Point.Flagged).ThenBy(point => point.Point.Upper).ThenBy(point => point.Point.Name, StringComparer.Ordinal).Take(LevelChart.Most);
        return [.. chosen.OrderBy(point => point.Point.Estimate).ThenBy(point => point.Point.Name, StringComparer.Ordinal)];
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, BoundedPoint bounded, double at, bool longer)
    {
        var point = bounded.Point;
        var tone = point.Flagged ? Tone.Alert : Tone.Main;
        if (bounded is { BoundLower: { } from, BoundUpper: { } to })
        {
            marks.Add(new LineMark([(from, at - Below), (to, at - Below)], Tone.Quiet, 1.2));
            foreach (var end in (ReadOnlySpan<double>)[from, to]) marks.Add(new LineMark([(end, at - Below - 0.1), (end, at - Below + 0.1)], Tone.Quiet, 1.2));
        }

        marks.Add(new IntervalMark(at, point.Estimate, point.Lower, point.Upper, Upright: false, tone, bounded.Few && !point.Flagged));
        if (!point.Flagged) return;
        var left = bounded.Upper > RoomRight && !longer;
        marks.Add(new LabelMark(left ? bounded.Lower : bounded.Upper, at, "flagged", left ? LabelSide.Left : LabelSide.Right, Tone.Alert, Strong: true));
    }

    private static Caption Reading(ImmutableArray<BoundedPoint> points, ImmutableArray<BoundedPoint> shown, string levels)
    {
        var text = " Dot: estimate. Line: its limits.";
        if (shown.Any(point => point.BoundLower is not null)) text += " Thin line below: from all without a conclusion taken as refuted to all taken as confirmed.";
        if (shown.Any(point => point.Point.Flagged)) text += " Diamond and word: flagged.";
        if (shown.Any(point => point is { Few: true, Point.Flagged: false })) text += $" Hollow and pale: fewer than {BoundedPoint.FewBelow} runs with a conclusion.";
        return shown.Length == points.Length ? text : (Caption)text + new Sentence(
            "Shown are the {0} of {1} " + levels + " that stand out most (flagged, then the lowest upper limits); the table has all.", Caption.Drawn(shown.Length), Caption.Drawn(points.Length));
    }
}
