using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts;

/// <summary>A proportion by period, with limits, against the whole span.</summary>
internal static class PeriodChart
{
    /// <summary>Limits further out than this many times the highest estimate are cut, and say so, lest one wide line flatten all the others.</summary>
    public const double Reach = 2.5;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Periods with a defined proportion, in order of time; at least one.</param>
    /// <param name="whole">The proportion of the whole span, or null.</param>
    /// <param name="days">Length of a period in days.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> points, double? whole, int days)
    {
        var own = Top(points, whole);
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double top) => Of(frame, points, whole, days, top);
    }

    private static double Top(ImmutableArray<ChartPoint> points, double? whole)
    {
        var solid = points.Where(point => !point.Few).ToArray();
        var highest = Math.Max(whole ?? 0, points.Max(point => point.Estimate));
        var reach = Math.Max(highest, Math.Min((solid.Length > 0 ? solid : [.. points]).Max(point => point.Upper), highest > 0 ? Reach * highest : 1));
        return reach > 0 ? Math.Min(1, 1.05 * reach) : 0.01;
    }

    private static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> points, double? whole, int days, double top)
    {
        var from = points[0].Start;
        var to = points[^1].Start.AddDays(days - 1);
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
            marks.Add(new LabelMark(from.DayNumber - pad, top * 1.12, "dashed: whole span " + Rounding.Print(Cell.Number(line), Unit.Proportion), LabelSide.BelowRight, Tone.Quiet));
        }

        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(points.Any(point => point.Few), points.Any(point => point.Upper > top)), frame.Description, frame.TableId,
            new Axis("", from.DayNumber - pad, to.DayNumber + pad, Ticks.Days(from, to), Lines: false),
            new Axis("", -0.02 * top, top * 1.12, Ticks.PerCent(top)),
            marks.ToImmutable(), 320);
    }

    private static string Reading(bool few, bool cut) =>
        " Dot: estimate. Line: its limits." + (few ? $" Hollow and pale: fewer than {ChartPoint.FewBelow} behind it." : "") + (cut ? " Lines with an arrow head go on beyond the edge." : "");
}
