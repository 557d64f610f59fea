using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>A share over time: periods with limits, a smooth line with its band, what changed when, and what is not complete yet.</summary>
internal static class TrendChart
{
    /// <summary>With more periods than this the limits of each are left to the table: the line and its band lead.</summary>
    public const int MostWithLimits = 90;

    private const double Plot = 280;

    /// <summary>Room above the scale where no words stand there.</summary>
    private const double Air = 12;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="series">What it shows.</param>
    public static Chart Of(ChartFrame frame, TrendSeries series)
    {
        var own = Top(series);
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double top) => Of(frame, series, top);
    }

    private static Chart Of(ChartFrame frame, TrendSeries series, double top)
    {
        var dots = series.Dots;
        var (from, to) = (dots[0].Start, dots[^1].End);
        var pad = Math.Max(1, (to.DayNumber - from.DayNumber) * 0.015);
        var horizontal = new Axis("", from.DayNumber - pad, to.DayNumber + pad, Ticks.Days(from, to.AddDays(-1)), Lines: false);
        var labels = Ticks.PerCent(top);
        var draft = new PictureArea(horizontal, new Axis("", 0, top, labels), 400);
        var words = TrendWords.Of(series, draft);
        var room = Math.Max(words.Room, Air);
        var vertical = new Axis("", -0.03 * top, top * (1 + (room / Plot)), labels);
        var height = (int)(Plot + room + PictureArea.Top + 36);
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        Behind(marks, series, top);
        Dots(marks, series, top);
        Lines(marks, series, from, to, top);
        words.Write(marks, area, top);
        Tell(marks, series, area, from, to, top, room);
        return new Chart(
            frame.Id, frame.Title, frame.Caption + TrendWords.Reading(series, top, words), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>The upper end: every line and share; limits that reach far beyond them are cut.</summary>
    private static double Top(TrendSeries series)
    {
        var shares = series.Dots.Where(dot => dot.Complete).Select(dot => dot.Value).Order().ToArray();
        if (shares.Length == 0) shares = [.. series.Dots.Select(dot => dot.Value).Order()];
        // One wild day among a thousand does not flatten the others.
        var highest = shares.Length > MostWithLimits ? Math.Min(shares[^1], 1.6 * shares[(int)(0.98 * (shares.Length - 1))]) : shares[^1];
        if (series.Smooth is { } smooth) highest = Math.Max(highest, smooth.Points.Max(point => Math.Min(point.Upper, 1.6 * point.Value)));
        if (series.Community is { Steps.IsEmpty: false } community) highest = Math.Max(highest, Math.Min(3 * highest, community.Steps.Max(step => step.Value * community.Scale)));
        var limits = series.Dots.Length > MostWithLimits ? 0 : series.Dots.Max(dot => dot.Upper);
        var reach = Math.Max(highest, Math.Min(limits, 1.7 * highest));
        return reach > 0 ? Math.Min(1.02, 1.05 * reach) : 0.01;
    }

    /// <summary>Bands behind everything: where follow-up waits or a period is not over, and where a change found may lie.</summary>
    private static void Behind(ImmutableArray<Mark>.Builder marks, TrendSeries series, double top)
    {
        if (series.Dots.FirstOrDefault(dot => dot.Open) is { } open && series.Dots[^1].Open)
        {
            var first = series.Dots.Last(dot => !dot.Open || dot == open) is { Open: false } settled ? settled.End : open.Start;
            marks.Add(new BandMark([(first.DayNumber, -0.03 * top, top), (series.Dots[^1].End.DayNumber, -0.03 * top, top)], Tone.Unknown, 0.17));
        }

        foreach (var change in series.Changes.Where(change => change is { From: not null, To: not null }))
        {
            marks.Add(new BandMark([(change.From!.Value.DayNumber, -0.03 * top, top), (change.To!.Value.DayNumber, -0.03 * top, top)], Tone.Open, 0.14));
        }

        if (series.Smooth is { } smooth)
        {
            marks.Add(new BandMark([.. smooth.Points.Select(point => (point.Day, Math.Max(0, point.Lower), Math.Min(top, point.Upper)))], Tone.Main, 0.2));
        }
    }

    private static void Dots(ImmutableArray<Mark>.Builder marks, TrendSeries series, double top)
    {
        var many = series.Dots.Length > MostWithLimits;
        foreach (var dot in series.Dots)
        {
            if (!many) marks.Add(new LineMark([(dot.Middle, dot.Lower), (dot.Middle, Math.Min(top, dot.Upper))], dot.Open ? Tone.Unknown : Tone.Waiting, 1.5));
        }

        foreach (var dot in series.Dots)
        {
            if (dot.Value > top && !many) marks.Add(new LabelMark(dot.Middle, top, Rounding.Print(Cell.Number(dot.Value), Unit.Proportion), LabelSide.BelowLeft, Tone.Quiet));
            if (dot.Value > top) continue;
            marks.Add(new DotMark(dot.Middle, dot.Value, dot.Open ? Tone.Quiet : Tone.Main, dot.Open ? DotShape.Hollow : DotShape.Filled, many ? 3.5 : series.Dots.Length > 45 ? 6 : 8, Faded: many || series.Smooth is not null));
        }
    }

    private static void Lines(ImmutableArray<Mark>.Builder marks, TrendSeries series, DateOnly from, DateOnly to, double top)
    {
        if (series.Smooth is { } smooth) marks.Add(new LineMark([.. smooth.Points.Where(point => point.Value <= top).Select(point => (point.Day, point.Value))], Tone.Main, 2.6));
        if (series.Community is { } community && Outside(community, from, to, top) is { Length: > 1 } line) marks.Add(new LineMark(line, Tone.Ink, 1.8, Dashed: true));
    }

    /// <summary>Lines say what they are, beside them; where there is no room, the words below the picture do.</summary>
    private static void Tell(ImmutableArray<Mark>.Builder marks, TrendSeries series, PictureArea area, DateOnly from, DateOnly to, double top, double room)
    {
        var places = new LabelPlaces(area);
        places.KeepTop(room);
        var many = series.Dots.Length > MostWithLimits;
        foreach (var dot in series.Dots.Where(dot => dot.Value <= top)) places.Keep(dot.Middle, dot.Value, many ? 3 : 8);
        foreach (var change in series.Changes) places.KeepLine((change.On.DayNumber, 0), (change.On.DayNumber, top));
        ImmutableArray<(double X, double Y)> smooth = series.Smooth is { } line ? [.. line.Points.Where(point => point.Value <= top).Select(point => (point.Day, point.Value))] : [];
        var outside = series.Community is { } community ? Outside(community, from, to, top) : [];
        places.KeepLine(smooth);
        places.KeepLine(outside);
        if (smooth.Length > 1 && places.Along(smooth, "smooth", Tone.Main, strong: true) is { } name) marks.Add(name with { Backed = true });
        if (outside.Length > 1 && (places.Along(outside, ChartText.Name(series.Community!.Words, 52), Tone.Ink) ?? places.Along(outside, ChartText.Name(series.Community.Words, 18), Tone.Ink)) is { } other) marks.Add(other with { Backed = true });
        var complete = series.Dots.All(dot => dot.Complete);
        if (series.Dots.FirstOrDefault(dot => dot.Value <= top && (complete ? dot.Pending > 0 : !dot.Complete)) is not { } open) return;
        if (places.Place(open.Middle, open.Value, complete ? "follow-up still waiting" : "not complete", Tone.Quiet) is { } waiting) marks.Add(waiting with { Backed = true });
    }

    /// <summary>The rate outside, through the middles of its steps.</summary>
    private static ImmutableArray<(double X, double Y)> Outside(TrendCommunity community, DateOnly from, DateOnly to, double top)
    {
        var middles = ImmutableArray.CreateBuilder<(double X, double Y)>();
        for (var index = 0; index < community.Steps.Length; index++)
        {
            var start = Math.Max(from.DayNumber, community.Steps[index].From.DayNumber);
            var end = Math.Min(to.DayNumber, index + 1 < community.Steps.Length ? community.Steps[index + 1].From.DayNumber : to.DayNumber);
            if (end <= start) continue;
            var value = Math.Min(top, community.Steps[index].Value * community.Scale);
            if (middles.Count == 0) middles.Add((start, value));
            middles.Add(((start + end) / 2.0, value));
            if (end == to.DayNumber) middles.Add((end, value));
        }

        return middles.ToImmutable();
    }
}
