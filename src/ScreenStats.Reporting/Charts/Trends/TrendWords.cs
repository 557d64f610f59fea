using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>The words above a trend, each over the place it speaks of, in as many lines as they need.</summary>
internal sealed class TrendWords
{
    /// <summary>More lines than this stand in the caption only.</summary>
    private const int MostLines = 4;

    private readonly ImmutableArray<(TrendChange Change, int Line, string Text, bool Left)> changes;
    private readonly ImmutableArray<(double At, string Text)> segments;
    private readonly int lines;
    private readonly int numbered;

    private TrendWords(ImmutableArray<(TrendChange Change, int Line, string Text, bool Left)> changes, ImmutableArray<(double At, string Text)> segments, int lines, int numbered)
    {
        this.changes = changes;
        this.segments = segments;
        this.lines = lines;
        this.numbered = numbered;
    }

    /// <summary>Room they need, in pixels.</summary>
    public double Room => (PictureArea.Line * (lines + (segments.IsEmpty ? 0 : 1))) + (lines > 0 || !segments.IsEmpty ? 6 : 0);

    /// <summary>Lays the words out.</summary>
    public static TrendWords Of(TrendSeries series, PictureArea area)
    {
        var ordered = series.Changes.Where(change => change.On >= series.Dots[0].Start && change.On <= series.Dots[^1].End).OrderBy(change => change.On).ToArray();
        if (!Lay(ordered, area, change => change.Found ? "slope changes " + Day(change.On) : ChartText.Name(change.Words, 40), out var laid, out var lines))
        {
            // Too many to be told in the picture: numbers, told in the caption.
            string Number(TrendChange change) => (1 + Array.IndexOf(ordered, change)).ToString(CultureInfo.InvariantCulture);
            if (!Lay(ordered, area, Number, out laid, out lines))
            {
                // Closer together than a number is wide: one below the other, whatever lies behind.
                laid = [.. ordered.Select((change, index) => (change, index % MostLines, Number(change), false))];
                lines = Math.Min(MostLines, ordered.Length);
            }

            return new TrendWords(laid, Fitting(series, area), lines, ordered.Length);
        }

        return new TrendWords(laid, Fitting(series, area), lines, 0);
    }

    /// <summary>Writes them: the lines of changes on top, growth below those, each change with its line down to the axis.</summary>
    public void Write(ImmutableArray<Mark>.Builder marks, PictureArea area, double top)
    {
        foreach (var (change, line, text, left) in changes)
        {
            var at = change.On.DayNumber;
            var y = area.YAt(PictureArea.Top + 8 + (PictureArea.Line * line));
            marks.Add(new LineMark([(at, -0.03 * top), (at, y)], Tone.Quiet, change.Found ? 1.6 : 1.3, Dashed: !change.Found));
            if (change.Found)
            {
                marks.Add(new LineMark([((change.From ?? change.On).DayNumber, 0), ((change.To ?? change.On).DayNumber, 0)], Tone.Ink, 2.5));
                marks.Add(new DotMark(at, 0, Tone.Ink, DotShape.HollowDiamond, 11));
            }

            marks.Add(new LabelMark(at, y, text, left ? LabelSide.Left : LabelSide.Right, Tone.Ink));
        }

        var growth = area.YAt(PictureArea.Top + 8 + (PictureArea.Line * lines));
        foreach (var (at, text) in segments) marks.Add(new LabelMark(at, growth, text, LabelSide.Centre, Tone.Main, Strong: true, Backed: true));
    }

    /// <summary>How to read the marks, for the caption.</summary>
    public static Caption Reading(TrendSeries series, double top, TrendWords words)
    {
        var (one, many) = (series.Period.One, series.Dots.Length > TrendChart.MostWithLimits);
        Caption text = many ? $" Each {one} is a dot; its limits stand in the table." : $" Dot and upright line: a {one} with its limits.";
        if (series.Smooth is not null) text += " Thick line: smooth, with its band.";
        if (series.Community is { } outside) text += new Sentence("Dashed: {0}.", Caption.Shown(ChartText.Name(outside.Words, 52)));
        if (series.Dots.Any(dot => !dot.Complete)) text += $" Grey: a {one} that is not over yet, or whose results are not all in; it is left out of lines and growth.";
        if (series.Dots.Sum(dot => dot.Pending) is > 0 and var waiting) text += new Sentence("Shaded, to the right: {0} there still wait for follow-up, which is no fall.", Caption.Drawn(waiting));
        if (series.Changes.Any(change => change.Found)) text += " Diamond on the axis: a change of slope found in the data, its line and the shading as far as it may lie either way.";
        if (series.Changes.Any(change => !change.Found)) text += " Dashed upright: a change that the program file dates.";
        if (series.Segments.Any(segment => !words.segments.Any(written => written.Text == segment.Words)))
            text += new Sentence("Growth: {0}.", Caption.Shown(string.Join("; ", series.Segments.Select(segment => $"{Day(segment.From)} to {Day(segment.To)}: {segment.Words}"))));
        if (words.numbered > 0) text += Caption.OfPicture(string.Join("; ", words.changes.Select(change => $"{change.Text}: {(change.Change.Found ? "slope changes" : ChartText.Name(change.Change.Words, 60))}, {Day(change.Change.On)}")) + ".");
        if (series.Community is { Scale: not 1 }) text += " The community's rate is drawn so that its mean lies at the mean of the line: compare the shape, not the height.";
        return many || !series.Dots.Any(dot => dot.Upper > top) ? text : text + " Limits that go on beyond the edge are cut there.";
    }

    /// <summary>Lays words out from the left, or where that has no room from the right.</summary>
    private static bool Lay(
        TrendChange[] ordered, PictureArea area, Func<TrendChange, string> words, out ImmutableArray<(TrendChange, int, string, bool)> laid, out int lines)
    {
        if (LayInOrder(ordered, area, words, out laid, out lines)) return true;
        return LayInOrder([.. ordered.Reverse()], area, words, out laid, out lines);
    }

    private static bool LayInOrder(
        TrendChange[] ordered, PictureArea area, Func<TrendChange, string> words, out ImmutableArray<(TrendChange, int, string, bool)> laid, out int lines)
    {
        var ends = new List<(double From, double To)>[MostLines];
        for (var index = 0; index < MostLines; index++) ends[index] = [];
        var places = ImmutableArray.CreateBuilder<(TrendChange, int, string, bool)>();
        lines = 0;
        laid = [];
        foreach (var change in ordered)
        {
            var text = words(change);
            var x = area.Pixel(change.On.DayNumber, 0).X;
            var width = ChartText.Measure(text) + 12;
            if (Place(ends, x, width) is not { } place) return false;
            // Its upright line runs down from its words through the lines of words below: no words may stand there, now or later.
            for (var below = place.Line; below < MostLines; below++) ends[below].Add(below == place.Line ? (place.Left ? x - width : x - 3, place.Left ? x + 3 : x + width) : (x - 3, x + 3));
            places.Add((change, place.Line, text, place.Left));
            lines = Math.Max(lines, place.Line + 1);
        }

        laid = [.. places.OrderBy(place => place.Item1.On)];
        return true;
    }

    private static (int Line, bool Left)? Place(List<(double From, double To)>[] ends, double x, double width)
    {
        for (var line = 0; line < MostLines; line++)
        {
            foreach (var left in (ReadOnlySpan<bool>)[false, true])
            {
                var (from, to) = left ? (x - width, x + 3) : (x - 3, x + width);
                if (from >= 0 && to <= Chart.Width - 2 && Free(ends[line], from, to) && ends.Skip(line + 1).All(taken => Free(taken, x - 3, x + 3))) return (line, left);
            }
        }

        return null;
    }

    private static bool Free(List<(double From, double To)> taken, double from, double to) => taken.TrueForAll(other => to < other.From || from > other.To);

    /// <summary>Each stretch's growth over its middle: whole where all have room, else short where there is room for that.</summary>
    private static ImmutableArray<(double At, string Text)> Fitting(TrendSeries series, PictureArea area)
    {
        bool Fits(TrendSegment segment, string words) => area.Pixel(segment.To.DayNumber, 0).X - area.Pixel(segment.From.DayNumber, 0).X > ChartText.Measure(words, strong: true) - 8;
        var whole = series.Segments.All(segment => Fits(segment, segment.Words));
        return
        [
            .. series.Segments.Where(segment => whole || Fits(segment, segment.Short))
                .Select(segment => ((segment.From.DayNumber + segment.To.DayNumber) / 2.0, whole ? segment.Words : segment.Short)),
        ];
    }

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
