using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Levels;

/// <summary>What was done for each thing found, by level, against the whole program; where nothing was found a line that goes on.</summary>
internal static class QuotientChart
{
    /// <summary>Limits that lie this many times apart are drawn by powers of ten.</summary>
    public const double Wide = 10;

    private const int Row = 28;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Levels; at least one.</param>
    /// <param name="whole">The quotient of the whole program, above 0.</param>
    /// <param name="words">What is found, of how few of it is spoken, and what the levels are: "case", "cases", "sites".</param>
    /// <param name="label">What the axis measures.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<QuotientPoint> points, double whole, (string One, string Many, string Levels) words, string label)
    {
        var shown = Shown(points);
        var least = Math.Min(whole, shown.Min(point => point.Lower));
        var most = Math.Max(whole, shown.Max(point => Math.Max(point.Upper ?? 0, Math.Max(point.Estimate ?? 0, point.Upper is null ? 1.6 * point.Lower : 0))));
        var wide = most / least > Wide;
        var (from, edge) = wide ? (least / 1.15, most * 1.08) : (0, most * 1.04);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new RuleMark(whole, Upright: true));
        for (var index = 0; index < shown.Length; index++)
        {
            var (point, at) = (shown[index], shown.Length - 1 - index);
            if (point.Estimate is { } estimate) marks.Add(new IntervalMark(at, estimate, point.Lower, point.Upper ?? edge, Upright: false, Tone.Main, point.Few, point.Upper is null));
            else marks.Add(new AtLeastMark(at, point.Lower, edge));
            if (point.Estimate is null) marks.Add(new LabelMark(point.Lower, at, "no " + words.One, Share(point.Lower) > 0.2 ? LabelSide.Left : LabelSide.AboveRight, Tone.Quiet));
        }

        marks.Add(new LabelMark(whole, shown.Length - 0.1, "whole program " + Rounding.Print(Cell.Number(whole), Unit.Ratio), Share(whole) < 0.6 ? LabelSide.Right : LabelSide.Left, Tone.Quiet));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(points, shown, wide, words), frame.Description, frame.TableId,
            new Axis(label, wide ? from : -0.012 * edge, edge * (wide ? 1.05 : 1.02), wide ? Ticks.PowersOfTen(from, edge) : Ticks.Counts(edge), wide ? AxisScale.Logarithmic : AxisScale.Linear),
            new Axis("", -0.7, shown.Length + 0.35, [.. shown.Select((point, index) => new Tick(shown.Length - 1 - index, ChartText.Name(point.Name)) { Level = point.Name })], Lines: false),
            marks.ToImmutable(), 94 + (Row * (shown.Length + 1)));

        // How far along the axis a value lies: words need room.
        double Share(double value) => wide ? Math.Log(value / from) / Math.Log(edge / from) : value / edge;
    }

    // From those that take most down: nothing found first, then by the estimate. Where there are too many, those with the highest lower limits.
    private static ImmutableArray<QuotientPoint> Shown(ImmutableArray<QuotientPoint> points) =>
    [
        .. points.OrderByDescending(point => point.Lower).ThenBy(point => point.Name, StringComparer.Ordinal).Take(LevelChart.Most)
            .OrderBy(point => point.Estimate is not null).ThenByDescending(point => point.Estimate ?? point.Lower).ThenBy(point => point.Name, StringComparer.Ordinal),
    ];

    private static Caption Reading(ImmutableArray<QuotientPoint> points, ImmutableArray<QuotientPoint> shown, bool wide, (string One, string Many, string Levels) words)
    {
        var text = " Dot: estimate. Line: its limits.";
        if (shown.Any(point => point is { Few: true, Estimate: not null })) text += $" Hollow and pale: fewer than {QuotientPoint.FewBelow} {words.Many}.";
        if (shown.Any(point => point.Estimate is null)) text += $" Stroke and line with an arrow head: no {words.One}, so that there is a lower limit only.";
        if (wide) text += " Equal steps to the right are equal multiples.";
        return shown.Length == points.Length ? text : (Caption)text + new Sentence(
            "Shown are the {0} of {1} " + words.Levels + " with the highest lower limits; the table has all.", Caption.Drawn(shown.Length), Caption.Drawn(points.Length));
    }
}
