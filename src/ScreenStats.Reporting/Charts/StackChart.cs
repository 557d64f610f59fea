using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts;

/// <summary>What became of each, as parts of a whole: one bar per row, each part named where it stands.</summary>
internal static class StackChart
{
    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="rows">Rows from top to bottom, each with its parts from left to right; rows without any count are left out.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<StackRow> rows)
    {
        var shown = rows.Where(row => row.Parts.Sum(part => part.Count) > 0).ToArray();
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var index = 0; index < shown.Length; index++) Add(marks, shown[index].Parts, shown.Length - 1 - index);
        for (var index = 0; index < shown.Length; index++)
        {
            if (shown[index].Settled is { } settled) marks.Add(new IntervalMark(shown.Length - 1 - index + Above, settled.Estimate, settled.Lower, settled.Upper, Upright: false, Tone.Ink, settled.Few));
        }

        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(shown), frame.Description, frame.TableId,
            new Axis("", 0, 1, Ticks.PerCent(1), Lines: false),
            new Axis("", -0.72, shown.Length - 0.55, [.. shown.Select((row, index) => new Tick(
                shown.Length - 1 - index, $"{ChartText.Name(row.Name)} ({Print(row.Parts.Sum(part => part.Count))})"))], Lines: false),
            marks.ToImmutable(), 66 + (76 * Math.Max(1, shown.Length)));
    }

    /// <summary>How far above the middle of its bar an interval stands.</summary>
    private const double Above = 0.32;

    private static string Reading(StackRow[] shown) =>
        " Parts are shares of all that were due; the numbers are counts."
        + (shown.Any(row => row.Settled is not null) ? " Dot and line above a bar: the settled share with its limits." : "")
        + (shown.Any(row => row.Settled is { Few: true }) ? $" Hollow and pale: fewer than {ChartPoint.FewBelow} behind it." : "");

    private static void Add(ImmutableArray<Mark>.Builder marks, ImmutableArray<StackPart> parts, double at)
    {
        var due = (double)parts.Sum(part => part.Count);
        var from = 0.0;
        var inside = new List<Mark>();
        var below = new List<string>();
        foreach (var part in parts.Where(part => part.Count > 0))
        {
            var to = from + (part.Count / due);
            marks.Add(new BarMark(at, from, to, part.Tone, 0.42));
            var text = $"{part.Name} {Print(part.Count)}";
            if ((to - from) * (Chart.Width - 150) > ChartText.Width(text) + 6)
            {
                inside.Add(new LabelMark((from + to) / 2, at, text, LabelSide.Centre, part.Tone is Tone.Main or Tone.Alert ? Tone.Paper : Tone.Ink));
            }
            else
            {
                below.Add(text);
            }

            from = to;
        }

        marks.AddRange(inside);
        if (below.Count > 0) marks.Add(new LabelMark(1, at - 0.5, "narrow parts, left to right: " + string.Join(", ", below), LabelSide.AboveLeft, Tone.Quiet));
    }

    private static string Print(long count) => count.ToString("N0", CultureInfo.InvariantCulture);
}
