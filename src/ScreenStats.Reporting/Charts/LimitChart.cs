using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts;

/// <summary>A control chart: points against limits of their own, over time or side by side. What lies outside has another shape and a word.</summary>
internal static class LimitChart
{
    private const string Side = " Bar: where chance alone puts one of its size, around the line. Diamond and word: outside.";

    /// <summary>How far the axis goes beyond the highest point: words stand there.</summary>
    private const double Room = 1.27;

    /// <summary>Builds a chart over time: the limits are a band of steps.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Points in order of time; at least one.</param>
    /// <param name="centre">What the limits stand around.</param>
    /// <param name="around">What the centre is: "usual", "other sites".</param>
    /// <param name="period">A period, and several: "week", "weeks".</param>
    public static Chart OverTime(ChartFrame frame, ImmutableArray<LimitPoint> points, double centre, string around, (string One, string Many) period)
    {
        var own = Top(points, centre);
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double top) => OverTime(frame, points, centre, around, period, top);
    }

    private static Chart OverTime(ChartFrame frame, ImmutableArray<LimitPoint> points, double centre, string around, (string One, string Many) period, double top)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        // Before the other lines: the drawing library would give its dashes to dots that follow it at once.
        marks.Add(new RuleMark(centre, Upright: false));
        foreach (var stretch in Stretches(points, (before, next) => before.End == next.Start))
        {
            marks.Add(new BandMark([.. stretch.SelectMany(point => new[] { Step(point, point.Start, top), Step(point, point.End, top) })], Tone.Main));
            marks.Add(new LineMark([.. stretch.SelectMany(point => new[] { (X: (double)point.Start.DayNumber, Y: Math.Min(point.Upper, top)), (X: (double)point.End.DayNumber, Y: Math.Min(point.Upper, top)) })], Tone.Waiting));
            if (stretch.Exists(point => point.Lower > 0))
                marks.Add(new LineMark([.. stretch.SelectMany(point => new[] { (X: (double)point.Start.DayNumber, Y: point.Lower), (X: (double)point.End.DayNumber, Y: point.Lower) })], Tone.Waiting));
            marks.Add(new LineMark([.. stretch.Select(point => (point.Middle, point.Value))], Tone.Main));
        }

        var size = points.Length > 80 ? 5 : 9;
        foreach (var point in points) marks.Add(Dot(point, point.Middle, point.Value, size));
        var (from, to) = (points[0].Start, points[^1].End);
        var pad = Math.Max(3, (to.DayNumber - from.DayNumber) * 0.02);
        foreach (var run in Stretches(points, (before, next) => before.Outside && next.Outside && before.Above == next.Above).Where(run => run[0].Outside))
        {
            var tip = run[0].Above ? run.MaxBy(point => point.Value)! : run.MinBy(point => point.Value)!;
            var right = tip.Middle < (from.DayNumber + to.DayNumber) / 2.0;
            var word = (run.Count == 1 ? "" : run.Count.ToString(CultureInfo.InvariantCulture) + " " + period.Many + " ") + (run[0].Above ? "above" : "below");
            marks.Add(new LabelMark(tip.Middle, tip.Value, word, run[0].Above ? right ? LabelSide.AboveRight : LabelSide.AboveLeft : right ? LabelSide.BelowRight : LabelSide.BelowLeft, Tone.Alert, Strong: true));
        }

        marks.Add(new LabelMark(from.DayNumber - pad, top * Room, $"dashed: {around} {Print(centre)}; band: limits", LabelSide.BelowRight, Tone.Quiet));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(points, period.One), frame.Description, frame.TableId,
            new Axis("", from.DayNumber - pad, to.DayNumber + pad, Ticks.Days(from, to.AddDays(-1)), Lines: false),
            new Axis("", -0.02 * top, top * Room, Ticks.PerCent(top)),
            marks.ToImmutable(), 320);
    }

    // Narrower than the dots on it, which would not stand out from its colour alone.
    private const double LimitsThickness = 0.3;

    /// <summary>Builds a chart of levels side by side, from top to bottom.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="points">Levels in the order in which they are shown; at least one. Beyond <see cref="LevelChart.Most"/> those outside come first.</param>
    /// <param name="centre">What the limits stand around.</param>
    /// <param name="around">What the centre is.</param>
    public static Chart SideBySide(ChartFrame frame, ImmutableArray<LimitPoint> points, double centre, string around)
    {
        var own = Top(Shown(points), centre);
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double top) => SideBySide(frame, points, centre, around, top);
    }

    private static ImmutableArray<LimitPoint> Shown(ImmutableArray<LimitPoint> points)
    {
        var chosen = points.OrderByDescending(point => point.Outside).ThenByDescending(point => point.Value).Take(LevelChart.Most).ToHashSet();
        return [.. points.Where(chosen.Contains)];
    }

    private static Chart SideBySide(ChartFrame frame, ImmutableArray<LimitPoint> points, double centre, string around, double top)
    {
        var shown = Shown(points);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var index = 0; index < shown.Length; index++) marks.Add(new BarMark(shown.Length - 1 - index, shown[index].Lower, Math.Min(shown[index].Upper, top), Tone.Waiting, LimitsThickness));
        marks.Add(new LineMark([(centre, -0.6), (centre, shown.Length - 0.4)], Tone.Quiet));
        for (var index = 0; index < shown.Length; index++)
        {
            var (point, at) = (shown[index], shown.Length - 1 - index);
            marks.Add(Dot(point, point.Value, at, 9));
            if (point.Outside) marks.Add(new LabelMark(point.Value, at, point.Above ? "above" : "below", point.Value > top * 0.75 ? LabelSide.Left : LabelSide.Right, Tone.Alert, Strong: true));
        }

        marks.Add(new LabelMark(centre, shown.Length - 0.1, $"{around} {Print(centre)}", centre > top * 0.6 ? LabelSide.Left : LabelSide.Right, Tone.Quiet));
        Caption left = shown.Length == points.Length ? "" : new Sentence("Shown are {0} of {1}, those outside first; the table has all.", Caption.Drawn(shown.Length), Caption.Drawn(points.Length));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Side + left, frame.Description, frame.TableId,
            new Axis("", -0.02 * top, top * 1.05, Ticks.PerCent(top)),
            new Axis("", -0.7, shown.Length + 0.35, [.. shown.Select((point, index) => new Tick(shown.Length - 1 - index, ChartText.Name(point.Name)) { Level = point.Name })], Lines: false),
            marks.ToImmutable(), 74 + (26 * (shown.Length + 1)));
    }

    private static (double X, double Lower, double Upper) Step(LimitPoint point, DateOnly at, double top) => (at.DayNumber, point.Lower, Math.Min(point.Upper, top));

    private static DotMark Dot(LimitPoint point, double x, double y, double size) => new(
        x, y, point.Outside ? Tone.Alert : Tone.Main,
        point.Outside ? DotShape.Diamond : point.Incomplete ? DotShape.Hollow : point.InPattern ? DotShape.Square : DotShape.Filled, point.Outside ? size + 4 : size);

    // Limits of a point with few runs reach far; they are cut, lest they flatten all the others.
    private static double Top(ImmutableArray<LimitPoint> points, double centre)
    {
        var highest = Math.Max(centre, points.Max(point => point.Value));
        return Math.Min(1, 1.05 * Math.Max(highest, Math.Min(points.Max(point => point.Upper), PeriodChart.Reach * highest)));
    }

    private static IEnumerable<List<LimitPoint>> Stretches(ImmutableArray<LimitPoint> points, Func<LimitPoint, LimitPoint, bool> together)
    {
        var stretch = new List<LimitPoint>();
        foreach (var point in points)
        {
            if (stretch.Count > 0 && !together(stretch[^1], point))
            {
                yield return stretch;
                stretch = [];
            }

            stretch.Add(point);
        }

        if (stretch.Count > 0) yield return stretch;
    }

    private static string Reading(ImmutableArray<LimitPoint> points, string one) =>
        $" Band: where chance alone puts a {one} of its size." + (points.Any(point => point.Outside) ? " Diamond and word: outside." : "")
        + (points.Any(point => point.InPattern && !point.Outside) ? " Square: inside, but ends a row such as chance seldom makes." : "")
        + (points.Any(point => point.Incomplete) ? " Hollow: not complete yet." : "");

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
