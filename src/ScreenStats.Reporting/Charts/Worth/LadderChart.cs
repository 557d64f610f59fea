using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>Which option gains most for how much infection: a stair of bars, one to an option, and below it how much infection there was, with a line up to the stair.</summary>
internal static class LadderChart
{
    private const double Row = 30;
    private const double Thick = 0.5;

    // Limits and rungs may lie many times farther out than any level: beyond this many times the highest one they are cut at the edge.
    private const double Beyond = 3;
    private const double Margin = 1.12;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="rungs">At least two, from the least infection to the most, each beginning where the one before it ends.</param>
    /// <param name="levels">How much infection there was; at least one.</param>
    /// <param name="axis">In what infections are measured, for the axis.</param>
    /// <param name="print">Prints a number of infections.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<LadderRung> rungs, ImmutableArray<LadderLevel> levels, string axis, Func<double, string> print)
    {
        var edge = Edge(rungs, levels);
        // Levels stand at the bottom in their order, one row of air above them, then the rungs upwards.
        double LevelAt(int index) => levels.Length - 1 - index;
        double RungAt(int index) => levels.Length + 0.5 + index;
        var shown = rungs.Where(rung => rung.From < edge).ToImmutableArray();
        var top = RungAt(shown.Length - 1) + 0.75;
        var horizontal = new Axis(axis, 0, edge, Ticks.Numbers(0, edge), Lines: false);
        var vertical = new Axis(
            "", -0.6, top,
            [.. levels.Select((level, index) => new Tick(LevelAt(index), level.Name)), .. shown.Select((rung, index) => new Tick(RungAt(index), ChartText.Name(rung.Name)))], Lines: false);
        var height = (int)(PictureArea.Top + 52 + (Row * (top + 0.6)));
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var index = 0; index < levels.Length; index++)
        {
            if (levels[index].Estimate <= edge) marks.Add(new LineMark([(levels[index].Estimate, LevelAt(index)), (levels[index].Estimate, top)], Tone.Quiet, 1.3));
        }

        marks.Add(new RuleMark(levels.Length - 0.25, Upright: false, Tone.Quiet, Dashed: false));
        for (var index = 0; index < shown.Length; index++) AddRung(marks, shown[index], RungAt(index), edge, area, print);
        for (var index = 0; index < levels.Length; index++) AddLevel(marks, levels[index], LevelAt(index), edge, area, print);
        return new Chart(frame.Id, frame.Title, frame.Caption + Reading(rungs, shown, levels, edge), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>The option that gains most for so much infection.</summary>
    public static LadderRung At(ImmutableArray<LadderRung> rungs, double infections) => rungs.LastOrDefault(rung => rung.From <= infections) ?? rungs[0];

    private static double Edge(ImmutableArray<LadderRung> rungs, ImmutableArray<LadderLevel> levels)
    {
        var places = levels.Select(level => level.Upper).Concat(rungs.Select(rung => rung.From)).Max();
        // The first step at least is seen, wherever it lies.
        var highest = Math.Max(levels.Max(level => level.Estimate), rungs.Length > 1 ? rungs[1].From / Beyond : 0);
        var reach = Math.Min(places, Beyond * highest);
        return reach > 0 ? Margin * reach : 1;
    }

    private static void AddRung(ImmutableArray<Mark>.Builder marks, LadderRung rung, double at, double edge, PictureArea area, Func<double, string> print)
    {
        var to = Math.Min(rung.To ?? edge, edge);
        marks.Add(new BarMark(at, rung.From, to, Tone.Main, Thick));
        var words = rung.To is { } end ? rung.From == 0 ? "up to " + print(end) : $"{print(rung.From)} to {print(end)}" : "from " + print(rung.From);
        // Words stand where the stair leaves room: left of a bar that begins far enough in, else right of it, else on it.
        var needs = ChartText.Measure(words) + 14;
        marks.Add(
            area.Pixel(rung.From, at).X - area.Left > needs ? new LabelMark(rung.From, at, words, LabelSide.Left, Backed: true)
            : area.Left + area.Wide - area.Pixel(to, at).X > needs ? new LabelMark(to, at, words, LabelSide.Right, Backed: true)
            : new LabelMark(rung.From, at, words, LabelSide.Right, Tone.Paper));
    }

    private static void AddLevel(ImmutableArray<Mark>.Builder marks, LadderLevel level, double at, double edge, PictureArea area, Func<double, string> print)
    {
        if (level.Estimate > edge)
        {
            marks.Add(new LabelMark(edge, at, $"beyond: {print(level.Estimate)}", LabelSide.Left, Tone.Quiet));
            return;
        }

        var end = Math.Min(level.Upper, edge);
        marks.Add(level.HasLimits ? new IntervalMark(at, level.Estimate, level.Lower, end, Upright: false, Tone.Ink, Cut: level.Upper > edge) : new DotMark(level.Estimate, at, Tone.Ink));
        var words = print(level.Estimate);
        var needs = ChartText.Measure(words) + 14;
        var start = level.HasLimits ? level.Lower : level.Estimate;
        marks.Add(
            area.Left + area.Wide - area.Pixel(end, at).X > needs ? new LabelMark(end, at, words, LabelSide.Right, Backed: true)
            : area.Pixel(start, at).X - area.Left > needs ? new LabelMark(start, at, words, LabelSide.Left, Backed: true)
            : new LabelMark(level.Estimate, at, words, level.Estimate < edge / 2 ? LabelSide.AboveRight : LabelSide.AboveLeft));
    }

    private static string Reading(ImmutableArray<LadderRung> rungs, ImmutableArray<LadderRung> shown, ImmutableArray<LadderLevel> levels, double edge)
    {
        var text = " Bars: between which numbers of infections an option gains most. Below the line: dot, how much infection there was"
            + (levels.Any(level => level.HasLimits) ? ", with its limits" : "") + "; the upright line leads from it to the option that gains most there.";
        if (levels.Any(level => level.HasLimits && level.Upper > edge && level.Estimate <= edge)) text += " Limits with an arrow head go on beyond the edge.";
        if (shown.Length < rungs.Length) text += " Options that gain most only far beyond the edge stand in the table.";
        return text;
    }
}
