using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Levels;

/// <summary>An accuracy as estimated here, beside what is stated of each device.</summary>
internal static class StatedChart
{
    /// <summary>More devices than this are not drawn.</summary>
    public const int Most = 12;

    private const int Row = 36;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="here">As estimated here.</param>
    /// <param name="stated">As stated of the devices; at least one.</param>
    /// <param name="near">Whether the scale begins near what is drawn, and not at 0.</param>
    public static Chart Of(ChartFrame frame, StatedRow here, ImmutableArray<StatedRow> stated, bool near)
    {
        ImmutableArray<StatedRow> rows = [here, .. stated.Take(Most)];
        var from = near ? Left(here, stated) : 0;
        var span = 1 - from;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var index = 0; index < rows.Length; index++) Add(marks, rows[index], rows.Length - 1 - index, index == 0 ? Tone.Main : Tone.Second, from);
        marks.Add(new LineMark([(from - (0.012 * span), rows.Length - 1.55), (1 + (0.02 * span), rows.Length - 1.55)], Tone.Waiting, 1));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(rows, stated.Length, from), frame.Description, frame.TableId,
            new Axis("", from - (0.012 * span), 1 + (0.02 * span), PerCent(from)),
            new Axis("", -0.7, rows.Length - 0.3, [.. rows.Select((row, index) => new Tick(rows.Length - 1 - index, ChartText.Name(row.Name)))], Lines: false),
            marks.ToImmutable(), 48 + (Row * rows.Length));
    }

    /// <summary>Where a scale near what is drawn begins: with room for words left of all limits. Bounds are far wider and may go on beyond it, where there is more than they.</summary>
    public static double Left(StatedRow here, ImmutableArray<StatedRow> stated)
    {
        var least = stated.Take(Most).Append(here).Min(row => row.Lower ?? row.Estimate ?? row.Bounds?.Lower ?? 1);
        return 1 - Math.Min(1, Math.Max(0.001, 1.3 * (1 - least)));
    }

    private static ImmutableArray<Tick> PerCent(double from) => [.. Ticks.Numbers(100 * from, 100).Select(tick => new Tick(tick.Position / 100, tick.Label + " %"))];

    private static void Add(ImmutableArray<Mark>.Builder marks, StatedRow row, double at, Tone tone, double from)
    {
        if (row.Bounds is { } bounds)
        {
            marks.Add(new LineMark([(Math.Max(from, bounds.Lower), at - BoundedChart.Below), (bounds.Upper, at - BoundedChart.Below)], Tone.Quiet, 1.2));
            foreach (var end in new[] { bounds.Lower, bounds.Upper }.Where(end => end >= from)) marks.Add(new LineMark([(end, at - BoundedChart.Below - 0.1), (end, at - BoundedChart.Below + 0.1)], Tone.Quiet, 1.2));
        }

        if (row.Estimate is { } estimate)
        {
            marks.Add(new IntervalMark(at, estimate, row.Lower ?? estimate, row.Upper ?? estimate, Upright: false, tone));
            Say(marks, Print(estimate) + (row.TakenAsExact ? ", stated without limits" : ""), row.Lower ?? estimate, row.Upper ?? estimate, at, from);
        }
        else if (row.Lower is { } lower)
        {
            marks.Add(new AtLeastMark(at, lower, 1, tone, Open: false));
            Say(marks, "at least " + Print(lower), lower, 1, at, from);
        }
        else if (row.Bounds is { } only)
        {
            Say(marks, $"bounds only: {Print(only.Lower)} to {Print(only.Upper)}", only.Lower, only.Upper, at, from);
        }
    }

    // Beside the line on the side that has more room; above it where neither has enough.
    private static void Say(ImmutableArray<Mark>.Builder marks, string words, double lower, double upper, double at, double from)
    {
        var (left, right, needed) = ((lower - from) / (1 - from), (1 - upper) / (1 - from), (ChartText.Measure(words) + LabelMark.Beside + 6) / 380);
        marks.Add(left >= needed ? new LabelMark(lower, at, words, LabelSide.Left) : right >= needed ? new LabelMark(upper, at, words, LabelSide.Right)
            : new LabelMark(left + needed < 1 ? lower : upper, at, words, left + needed < 1 ? LabelSide.AboveRight : LabelSide.AboveLeft));
    }

    private static Caption Reading(ImmutableArray<StatedRow> rows, int stated, double from)
    {
        var text = " Dot: estimate, or value as stated. Line: its limits.";
        if (rows[0] is { Estimate: null, Lower: not null }) text += " Stroke and line: at least so much.";
        if (rows[0].Bounds is not null) text += " Thin line: what the counts alone allow, whatever the runs were that were not verified.";
        if (from > 0) text += " The scale does not begin at nothing.";
        return rows.Length - 1 == stated ? text : (Caption)text + new Sentence("Shown are the first {0} of {1} devices.", Caption.Drawn(rows.Length - 1), Caption.Drawn(stated));
    }

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
