using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>Levels in order of their adjusted share, with its limits, and the share as it was counted beside it as an open ring.</summary>
internal static class AdjustedChart
{
    /// <summary>More levels than this are not drawn: the outer ones are, from both ends.</summary>
    public const int Most = 30;

    private const double Row = 25;

    /// <summary>Room of a line of words, in rows.</summary>
    private const double Words = 0.75;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="levels">Levels with an adjusted share; at least one.</param>
    /// <param name="whole">The share of the whole program, or null.</param>
    /// <param name="many">What the levels are, in the plural: "sites".</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<AdjustedLevel> levels, double? whole, string many)
    {
        var ordered = levels.OrderByDescending(level => level.Adjusted).ThenBy(level => level.Name, StringComparer.Ordinal).ToImmutableArray();
        var (upper, lower) = Ends(ordered);
        var own = Edge(upper.AddRange(lower), whole);
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double edge) => Of(frame, levels, upper, lower, whole, many, edge);
    }

    private static Chart Of(
        ChartFrame frame, ImmutableArray<AdjustedLevel> levels, ImmutableArray<AdjustedLevel> upper, ImmutableArray<AdjustedLevel> lower, double? whole, string many, double edge)
    {
        var rows = upper.Length + lower.Length + (lower.IsEmpty ? 0 : 1);
        var shown = upper.AddRange(lower);
        var labels = Ticks.PerCent(edge);
        var names = ImmutableArray.CreateBuilder<Tick>();
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var horizontal = new Axis("", -0.012 * edge, edge * 1.02, labels);
        for (var index = 0; index < shown.Length; index++) names.Add(new Tick(At(index, upper.Length, rows), ChartText.Name(shown[index].Name)) { Level = shown[index].Name });
        var vertical = new Axis("", -0.7, rows - 0.3 + Words + (whole is null ? 0 : Words), names.ToImmutable(), Lines: false);
        var height = (int)(PictureArea.Top + 28 + (Row * (vertical.To - vertical.From)));

        if (whole is { } line) marks.Add(new LineMark([(line, -0.7), (line, rows - 0.45 + Words)], Tone.Quiet, 1.5));
        for (var index = 0; index < shown.Length; index++) Add(marks, shown[index], At(index, upper.Length, rows), edge);
        if (!lower.IsEmpty) marks.Add(new LabelMark(horizontal.From, lower.Length, string.Create(CultureInfo.InvariantCulture, $"… {levels.Length - shown.Length:N0} more {many} between these"), LabelSide.Right, Tone.Quiet));
        if (whole is { } value) marks.Add(new LabelMark(value, rows - 0.1 + Words, "whole program " + Print(value), value > 0.55 * edge ? LabelSide.Left : LabelSide.Right, Tone.Quiet));
        Tell(marks, shown[0], rows - 1, edge);
        return new Chart(frame.Id, frame.Title, frame.Caption + Reading(shown, edge, levels.Length, many), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    private static double At(int index, int above, int rows) => rows - 1 - index - (index >= above && rows > above ? 1 : 0);

    private static (ImmutableArray<AdjustedLevel> Upper, ImmutableArray<AdjustedLevel> Lower) Ends(ImmutableArray<AdjustedLevel> ordered) =>
        ordered.Length <= Most ? (ordered, []) : (ordered[..(Most / 2)], ordered[^(Most / 2)..]);

    /// <summary>The right end: all adjusted limits that are not far beyond the shares, and the counted shares that rest on enough.</summary>
    private static double Edge(ImmutableArray<AdjustedLevel> shown, double? whole)
    {
        var highest = Math.Max(whole ?? 0, shown.Max(level => level.Adjusted));
        var raw = shown.Where(level => level.Trials >= ChartPoint.FewBelow).Select(level => level.Raw ?? 0).DefaultIfEmpty(0).Max();
        var reach = Math.Max(Math.Min(raw, 3 * highest), Math.Max(highest, Math.Min(shown.Max(level => level.Upper), PeriodChart.Reach * highest)));
        return reach > 0 ? Math.Min(1, 1.04 * reach) : 0.01;
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, AdjustedLevel level, double at, double edge)
    {
        var tone = LevelStandings.Tone(level.Far);
        marks.Add(new LineMark([(level.Lower, at), (Math.Min(level.Upper, edge), at)], tone, 2.5));
        if (level.Raw is { } raw && raw <= edge) marks.Add(new DotMark(raw, at, Tone.Quiet, DotShape.Hollow, 9));
        marks.Add(new DotMark(Math.Min(level.Adjusted, edge), at, tone, level.Standing.Shape(), level.Standing == LevelStanding.Within ? 8 : 12));
        var words = level.Raw > edge ? $"raw {Print(level.Raw.Value)}, beyond" : level.Upper > edge ? $"to {Print(level.Upper)}" : "";
        if (words.Length > 0) marks.Add(new LabelMark(edge, at + 0.42, words, LabelSide.Left, Tone.Quiet));
    }

    /// <summary>The first row says what its marks are: the adjusted share, and the ring as it was counted.</summary>
    private static void Tell(ImmutableArray<Mark>.Builder marks, AdjustedLevel level, double at, double edge)
    {
        if (level.Adjusted > edge || level.Raw > edge || level.Upper > edge) return;
        var right = level.Raw is not { } raw || raw <= level.Adjusted;
        marks.Add(new LabelMark(level.Adjusted, at, "adjusted", right ? LabelSide.AboveRight : LabelSide.AboveLeft, LevelStandings.Tone(level.Far)));
        if (level.Raw is { } counted) marks.Add(new LabelMark(counted, at, "raw", right ? LabelSide.AboveLeft : LabelSide.AboveRight, Tone.Quiet));
    }

    private static Caption Reading(ImmutableArray<AdjustedLevel> shown, double edge, int all, string many)
    {
        var text = $" In order of the adjusted share. Dot with its limits: adjusted; ring: as counted. The farther a ring lies from its mark, the more was owed to chance, or to when and with what was tested.";
        if (shown.Any(level => level.Standing != LevelStanding.Within)) text += " Triangle: outside the funnel's limits, above pointing up, below pointing down.";
        if (shown.Any(level => level.Far)) text += " Dark: outside the 99.8 % limits.";
        if (shown.Any(level => level.Upper > edge || level.Raw > edge)) text += " What goes on beyond the edge is told in words.";
        return shown.Length == all ? text : (Caption)text + new Sentence(
            "Shown are the {0} highest and the {0} lowest of {1} " + many + "; the table has all.", Caption.Drawn(Most / 2), Caption.Drawn(all));
    }

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
