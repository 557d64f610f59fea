using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>A share by day of the week, Monday first.</summary>
internal static class WeekdayChart
{
    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="days">Days in the order of the week, with a name and a share with limits; at least one.</param>
    /// <param name="whole">The share of all days.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> days, double whole)
    {
        var highest = Math.Max(whole, days.Max(day => day.Estimate));
        var own = 1.06 * Math.Max(highest, Math.Min(days.Max(day => day.Upper), PeriodChart.Reach * highest));
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double top) => Of(frame, days, whole, top);
    }

    private static Chart Of(ChartFrame frame, ImmutableArray<ChartPoint> days, double whole, double top)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new RuleMark(whole, Upright: false));
        for (var index = 0; index < days.Length; index++)
        {
            var day = days[index];
            marks.Add(new IntervalMark(index, day.Estimate, day.Lower, Math.Min(day.Upper, top), Upright: true, Tone.Main, day.Few, day.Upper > top));
        }

        marks.Add(new LabelMark(-0.6, top * 1.14, "dashed: all days " + Rounding.Print(Cell.Number(whole), Unit.Proportion), LabelSide.BelowRight, Tone.Quiet));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + " Dot: estimate. Line: its limits." + (days.Any(day => day.Few) ? $" Hollow and pale: fewer than {ChartPoint.FewBelow} behind it." : ""),
            frame.Description, frame.TableId,
            new Axis("", -0.6, days.Length - 0.4, [.. days.Select((day, index) => new Tick(index, day.Name))], Lines: false),
            new Axis("", -0.02 * top, top * 1.14, Ticks.PerCent(top)),
            marks.ToImmutable(), 260);
    }
}
