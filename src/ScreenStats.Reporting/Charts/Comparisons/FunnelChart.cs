using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Comparisons;

/// <summary>Levels by their size against the limits for that size. What lies outside has a shape, a darker mark and its name.</summary>
internal static class FunnelChart
{
    /// <summary>More names than this are not written; the table has them.</summary>
    public const int MostNames = 12;

    private const int FewLevels = 40;
    private const double Plot = 330;

    /// <summary>Room above the scale, for what stands on its edge.</summary>
    private const double Air = 12;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="dots">Levels; at least one.</param>
    /// <param name="centre">The share the funnel stands around.</param>
    /// <param name="chance">Limits of chance alone, by rising size; at least two, or none where the others judge.</param>
    /// <param name="wider">Limits that allow for the usual differences too, by which the dots are judged; empty where chance alone judges them.</param>
    /// <param name="levels">What the levels are, in the plural: "sites".</param>
    /// <param name="counted">What sizes count: "valid tests".</param>
    /// <param name="named">Whether names may stand in the picture.</param>
    public static Chart Of(
        ChartFrame frame, ImmutableArray<FunnelDot> dots, double centre, ImmutableArray<FunnelLimit> chance, ImmutableArray<FunnelLimit> wider, string levels, string counted, bool named = true)
    {
        var own = Top(dots, centre, wider.IsEmpty ? chance : wider);
        return To(own) with { Scale = ChartScale.Of(frame, own, To) };

        Chart To(double top) => Of(frame, dots, centre, chance, wider, levels, counted, named, top);
    }

    private static Chart Of(
        ChartFrame frame, ImmutableArray<FunnelDot> dots, double centre, ImmutableArray<FunnelLimit> chance, ImmutableArray<FunnelLimit> wider, string levels, string counted, bool named, double top)
    {
        var logarithmic = Logarithmic(dots);
        var sizes = dots.Select(dot => (double)dot.Trials).ToArray();
        var (from, to) = logarithmic ? (sizes.Min() / 1.25, sizes.Max() * 1.35) : Evenly(sizes);
        var judging = wider.IsEmpty ? chance : wider;
        var horizontal = new Axis(
            counted + (logarithmic ? ", logarithmic: equal steps, equal ratios" : ""), from, to, logarithmic ? Ticks.PowersOfTen(from, to) : Ticks.Counts(from, to),
            logarithmic ? AxisScale.Logarithmic : AxisScale.Linear, Lines: false);
        var labels = Ticks.PerCent(top);
        var vertical = new Axis("", -0.025 * top, top * (1 + (Air / Plot)), labels);
        var height = (int)(Plot + Air + PictureArea.Top + 52);
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(Between(judging, from, to, top));
        if (!wider.IsEmpty && !chance.IsEmpty)
        {
            Curves(marks, chance, from, to, top, limit => limit.OuterLower, limit => limit.OuterUpper, Tone.Quiet, 1);
            Curves(marks, chance, from, to, top, limit => limit.InnerLower, limit => limit.InnerUpper, Tone.Quiet, 1);
        }

        marks.Add(new LineMark([(from, centre), (to, centre)], Tone.Quiet, 1.2));
        Curves(marks, judging, from, to, top, limit => limit.OuterLower, limit => limit.OuterUpper, Tone.Main, 2.2);
        var beyond = Dots(marks, dots, top);
        var places = Places(dots, area, top);
        var middle = new LabelMark(area.XAt(area.Left + area.Wide), centre, Print(centre), LabelSide.AboveLeft, Tone.Quiet, Backed: true);
        places.Keep(middle);
        // Names of levels have the first choice of places.
        var unnamed = Names(marks, dots, places, centre, top, named);
        Tell(marks, places, judging, chance, wider, from, to, top);
        marks.Add(middle);
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(dots, judging, wider.IsEmpty, beyond, unnamed, levels), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>Whether sizes lie so far apart that an even axis would press most levels against its left end.</summary>
    private static bool Logarithmic(ImmutableArray<FunnelDot> dots)
    {
        var sizes = dots.Select(dot => dot.Trials).Order().ToArray();
        return sizes[^1] > 6 * sizes[sizes.Length / 2] || sizes[^1] > 20 * sizes[sizes.Length / 10];
    }

    /// <summary>From nothing, unless the levels are all of much the same size.</summary>
    private static (double From, double To) Evenly(double[] sizes)
    {
        var (least, most) = (sizes.Min(), sizes.Max());
        var from = least > most / 3 ? Math.Max(0, least - Math.Max(0.12 * (most - least), 0.05 * most)) : 0;
        return (from, most + Math.Max(0.06 * (most - from), 1));
    }

    /// <summary>The upper end: high enough for what rests on enough to be read, and for what lies outside, unless that would flatten all else.</summary>
    private static double Top(ImmutableArray<FunnelDot> dots, double centre, ImmutableArray<FunnelLimit> limits)
    {
        var sizes = dots.Select(dot => dot.Trials).Order().ToArray();
        var typical = sizes[sizes.Length / 4];
        var mouth = limits.Where(limit => limit.Trials >= typical).Select(limit => limit.OuterUpper).FirstOrDefault(centre);
        var solid = dots.Where(dot => dot.Trials >= ChartPoint.FewBelow || dots.Length < 4).Select(dot => dot.Rate).DefaultIfEmpty(0).Max();
        var usual = Math.Max(Math.Max(1.5 * centre, Math.Min(mouth, 3 * centre)), solid);
        var outside = dots.Where(dot => dot.Standing != LevelStanding.Within).Select(dot => dot.Rate).DefaultIfEmpty(0).Max();
        return Math.Min(1.02, 1.06 * Math.Max(usual, Math.Min(outside, 1.4 * usual)));
    }

    /// <summary>Where names may stand: off the dots.</summary>
    private static LabelPlaces Places(ImmutableArray<FunnelDot> dots, PictureArea area, double top)
    {
        var places = new LabelPlaces(area);
        foreach (var dot in dots) places.Keep(dot.Trials, Math.Min(dot.Rate, top), dot.Standing != LevelStanding.Within ? 11 : dots.Length > 60 ? 4 : 9);
        return places;
    }

    /// <summary>Each curve says what it is, beside it; where there is no room, the words below the picture do.</summary>
    private static void Tell(
        ImmutableArray<Mark>.Builder marks, LabelPlaces places, ImmutableArray<FunnelLimit> judging, ImmutableArray<FunnelLimit> chance, ImmutableArray<FunnelLimit> wider, double from, double to, double top)
    {
        var shown = Around(judging, from, to);
        var lines = new List<(ImmutableArray<(double X, double Y)> Line, string Words, Tone Tone)>
        {
            (Within(Inside(shown, limit => limit.OuterUpper, value => value <= top, top), from, to), wider.IsEmpty ? "99.8 % limits, chance alone" : "99.8 % limits", Tone.Main),
            (Within(Inside(shown, limit => limit.InnerUpper, value => value <= top, top), from, to), "95 % limits", Tone.Main),
        };
        if (!wider.IsEmpty && !chance.IsEmpty) lines.Add((Within(Inside(Around(chance, from, to), limit => limit.OuterUpper, value => value <= top, top), from, to), "chance alone", Tone.Quiet));
        foreach (var (line, _, _) in lines) places.KeepLine(line, 3);
        foreach (var (line, words, tone) in lines)
        {
            if (line.Length > 1 && places.Along(line, words, tone) is { } label) marks.Add(label with { Backed = true });
        }
    }

    /// <summary>The part of a curve between the picture's sides, in steps fine enough to keep words off it.</summary>
    private static ImmutableArray<(double X, double Y)> Within(ImmutableArray<(double X, double Y)> line, double from, double to)
    {
        if (line.Length < 2) return [];
        var (left, right) = (Math.Max(from, line[0].X), Math.Min(to, line[^1].X));
        return right <= left ? [] : [.. Enumerable.Range(0, 41).Select(step => left + (step / 40.0 * (right - left))).Select(x => (x, LabelPlaces.HeightAt(line, x)))];
    }

    /// <summary>The limits of the sizes shown, and of one more on either side, so that curves reach the edges; the drawing is cut there.</summary>
    private static FunnelLimit[] Around(ImmutableArray<FunnelLimit> limits, double from, double to)
    {
        var first = Math.Max(0, limits.Count(limit => limit.Trials < from) - 1);
        return [.. limits.Skip(first).Take(limits.Count(limit => limit.Trials <= to) + 1 - first)];
    }

    private static BandMark Between(ImmutableArray<FunnelLimit> limits, double from, double to, double top) => new(
        [.. Around(limits, from, to).Select(limit => (limit.Trials, Math.Max(0, limit.InnerLower), Math.Min(top, limit.InnerUpper)))], Tone.Main, 0.13);

    private static void Curves(
        ImmutableArray<Mark>.Builder marks, ImmutableArray<FunnelLimit> limits, double from, double to, double top, Func<FunnelLimit, double> lower, Func<FunnelLimit, double> upper,
        Tone tone, double width)
    {
        var shown = Around(limits, from, to);
        var above = Inside(shown, upper, value => value <= top, top);
        var below = Inside(shown, lower, value => value > 0, 0);
        if (above.Length > 1) marks.Add(new LineMark(above, tone, width));
        // A scrap of a line along the axis is no limit to anybody.
        if (below.Length > 1 && below.Max(point => point.Y) > 0.02 * top) marks.Add(new LineMark(below, tone, width));
    }

    /// <summary>The part of a curve within the picture, from where it comes in through the edge.</summary>
    private static ImmutableArray<(double X, double Y)> Inside(FunnelLimit[] limits, Func<FunnelLimit, double> value, Func<double, bool> inside, double edge)
    {
        var points = ImmutableArray.CreateBuilder<(double X, double Y)>();
        for (var index = 0; index < limits.Length; index++)
        {
            var here = value(limits[index]);
            if (!inside(here)) continue;
            if (points.Count == 0 && index > 0)
            {
                var before = value(limits[index - 1]);
                var share = before == here ? 0 : (edge - before) / (here - before);
                points.Add((limits[index - 1].Trials + (share * (limits[index].Trials - limits[index - 1].Trials)), edge));
            }

            points.Add((limits[index].Trials, here));
        }

        return points.ToImmutable();
    }

    private static int Dots(ImmutableArray<Mark>.Builder marks, ImmutableArray<FunnelDot> dots, double top)
    {
        var crowd = dots.Length > 300 ? 4.5 : dots.Length > 60 ? 6.5 : 9;
        foreach (var dot in dots.Where(dot => dot.Standing == LevelStanding.Within))
        {
            marks.Add(new DotMark(dot.Trials, Math.Min(dot.Rate, top), Tone.Main, dot.Rate > top ? DotShape.Hollow : DotShape.Filled, crowd, Faded: dots.Length > 120));
        }

        foreach (var dot in dots.Where(dot => dot.Standing != LevelStanding.Within).OrderBy(dot => dot.Far))
        {
            var crowded = dots.Length > 120 && !dot.Far;
            marks.Add(new DotMark(dot.Trials, Math.Min(dot.Rate, top), LevelStandings.Tone(dot.Far), dot.Standing.Shape(), crowded ? 7 : dots.Length > 300 ? 9 : 12, Faded: crowded));
        }

        return dots.Count(dot => dot.Rate > top);
    }

    private static int Names(ImmutableArray<Mark>.Builder marks, ImmutableArray<FunnelDot> dots, LabelPlaces places, double centre, double top, bool named)
    {
        // Of many levels one in twenty lies outside the inner limits by chance: those are named only where there are few.
        var outside = dots.Where(dot => dot.Far || (dot.Standing != LevelStanding.Within && dots.Length <= FewLevels)).ToArray();
        if (!named) return 0;
        var written = 0;
        foreach (var dot in outside.OrderByDescending(dot => dot.Far).ThenByDescending(dot => Math.Abs(dot.Rate - centre) * Math.Sqrt(dot.Trials)).ThenBy(dot => dot.Name, StringComparer.Ordinal))
        {
            if (written == MostNames) break;
            var text = ChartText.Name(dot.Name, outside.Length > 6 ? 16 : 22) + (dot.Rate > top ? " " + Print(dot.Rate) : "");
            if (places.Place(dot.Trials, Math.Min(dot.Rate, top), text, LevelStandings.Tone(dot.Far), strong: dot.Far) is not { } label) continue;
            marks.Add(label with { Level = dot.Name });
            written++;
        }

        return outside.Length - written;
    }

    private static Caption Reading(ImmutableArray<FunnelDot> dots, ImmutableArray<FunnelLimit> judging, bool chanceOnly, int beyond, int unnamed, string levels)
    {
        var text = chanceOnly
            ? " The more runs, the closer chance keeps a level to the line: shaded, where it puts 95 in 100 that are all alike; between the blue lines, 998 in 1,000."
            : $" These {levels} differ by more than chance all over, so the blue limits allow for the usual difference between them; the thin lines are those of chance alone.";
        text += dots.Any(dot => dot.Standing != LevelStanding.Within) ? " Triangle: outside the 95 % limits, above pointing up, below pointing down" + (dots.Any(dot => dot.Far) ? "; in the colour of the words: outside the 99.8 % limits too." : ".") : " None lies outside.";
        if (dots.Any(dot => dot.Standing == LevelStanding.Within && Beyond(dot, judging))) text += " A circle barely beyond the shading is within all the same: the exact chance decides, and the line is drawn between whole counts.";
        Caption caption = text;
        if (beyond > 0) caption += new Sentence("{0} beyond the upper edge " + (beyond == 1 ? "is" : "are") + " drawn on it.", Caption.Drawn(beyond));
        if (unnamed > 0) caption += new Sentence("{0} outside " + (unnamed == 1 ? "has" : "have") + " no name here for want of room; the table names " + (unnamed == 1 ? "it." : "them."), Caption.Drawn(unnamed));
        return caption;
    }

    private static bool Beyond(FunnelDot dot, ImmutableArray<FunnelLimit> limits)
    {
        if (limits.LastOrDefault(limit => limit.Trials <= dot.Trials) is not { } below || limits.FirstOrDefault(limit => limit.Trials >= dot.Trials) is not { } above) return false;
        var share = above.Trials > below.Trials ? (dot.Trials - below.Trials) / (above.Trials - below.Trials) : 0;
        return dot.Rate > below.InnerUpper + (share * (above.InnerUpper - below.InnerUpper)) || dot.Rate < below.InnerLower + (share * (above.InnerLower - below.InnerLower));
    }

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
