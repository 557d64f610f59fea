using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>Days between a person's consecutive screens as they were, against those planned.</summary>
internal static class GapChart
{
    /// <summary>Longer gaps are one bar together.</summary>
    public const int MostDays = 21;

    private const double Plot = 190;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="gaps">Gaps that occurred, the shortest first; at least one.</param>
    /// <param name="planned">Days between screens as planned, on average; null where there is no plan.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<GapShare> gaps, double? planned)
    {
        var last = Math.Clamp(Math.Max(gaps[^1].Days, (int)Math.Ceiling(planned ?? 0)), 3, MostDays);
        var beyond = gaps.Where(gap => gap.Days > last).Sum(gap => gap.Share);
        var bars = gaps.Where(gap => gap.Days <= last).Select(gap => (Day: (double)gap.Days, gap.Share)).ToList();
        if (beyond > 0) bars.Add((last + 1, beyond));
        var top = 1.04 * bars.Max(bar => bar.Share);
        var every = last <= 8 ? 1 : last <= 14 ? 2 : 3;
        var days = Enumerable.Range(1, last).Where(day => (day - 1) % every == 0).Select(day => new Tick(day, day.ToString(CultureInfo.InvariantCulture))).ToList();
        if (beyond > 0)
        {
            if (days[^1].Position > last - 1) days.RemoveAt(days.Count - 1);
            days.Add(new Tick(last + 1, "longer"));
        }

        var right = last + (beyond > 0 ? 1.9 : 0.7);
        var horizontal = new Axis("days to a person's next screen", 0.3, right, [.. days], Lines: false);
        var room = planned is null ? 0 : PictureArea.Line;
        var vertical = new Axis("", 0, top * (1 + (room / Plot)), Ticks.PerCent(top));
        var height = (int)(Plot + room + PictureArea.Top + 52);
        var wide = Math.Min(24, 0.7 * new PictureArea(horizontal, vertical, height).Wide / (right - 0.3));

        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var (day, share) in bars) marks.Add(new LineMark([(day, 0), (day, share)], day > last ? Tone.Waiting : Tone.Main, wide));
        if (planned is { } plan && plan <= right)
        {
            marks.Add(new LineMark([(plan, 0), (plan, top * (1 + (0.55 * room / Plot)))], Tone.Ink, 1.8, Dashed: true));
            marks.Add(new LabelMark(plan, top * (1 + (0.55 * room / Plot)), "planned: " + Rounding.Print(Cell.Number(plan), Unit.Days) + (plan == 1 ? " day" : " days") + " on average", plan > 0.6 * right ? LabelSide.Left : LabelSide.Right, Tone.Ink, Strong: true));
        }

        return new Chart(
            frame.Id, frame.Title, frame.Caption + (beyond > 0 ? string.Create(CultureInfo.InvariantCulture, $" Pale, last: all gaps of more than {last} days together.") : ""),
            frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }
}
