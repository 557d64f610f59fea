using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Charts;

/// <summary>A proportion by period, with limits, against the whole span.</summary>
internal static class PeriodChart
{
    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Periods with a defined proportion, in order of time; at least one.</param>
    /// <param name="whole">The proportion of the whole span, or null.</param>
    /// <param name="days">Length of a period in days.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> points, double? whole, int days)
    {
        var from = points[0].Start;
        var to = points[^1].Start.AddDays(days - 1);
        var solid = points.Where(point => !point.Few).ToArray();
        var top = Math.Min(1, 1.08 * Math.Max(
            (solid.Length > 0 ? solid : [.. points]).Max(point => point.Upper), Math.Max(whole ?? 0, points.Max(point => point.Estimate))));
        if (top <= 0) top = 0.01;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        if (whole is { } value) marks.Add(new RuleMark(value, Upright: false));
        foreach (var point in points)
        {
            // The middle of the period: its first day would stand half a period too early.
            marks.Add(new IntervalMark(
                point.Start.DayNumber + ((days - 1) / 2.0), point.Estimate, point.Lower, Math.Min(point.Upper, top), Upright: true, Tone.Main, point.Few, point.Upper > top));
        }

        var pad = Math.Max(days, (to.DayNumber - from.DayNumber) * 0.02);
        if (whole is { } line)
        {
            marks.Add(new LabelMark(to.DayNumber + pad, line, "whole span " + Rounding.Print(Cell.Number(line), Unit.Proportion), LabelSide.AboveLeft, Tone.Quiet));
        }

        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(points.Any(point => point.Few), points.Any(point => point.Upper > top)), frame.Description, frame.TableId,
            new Axis("", from.DayNumber - pad, to.DayNumber + pad, Ticks.Days(from, to), Lines: false),
            new Axis("", 0, top, Ticks.PerCent(top)),
            marks.ToImmutable(), 320);
    }

    private static string Reading(bool few, bool cut) =>
        " Dot: estimate. Line: its limits." + (few ? $" Hollow and pale: fewer than {ChartPoint.FewBelow} behind it." : "") + (cut ? " Lines ending in an open mark go on beyond the edge." : "");
}
