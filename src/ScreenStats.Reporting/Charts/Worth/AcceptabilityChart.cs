using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>How likely each option is the best, against what an effect is worth. Where an option is the one to choose its line is thick.</summary>
internal static class AcceptabilityChart
{
    /// <summary>An option whose share stays below this is drawn without a name.</summary>
    public const double NamedFrom = 0.04;

    private const double Plot = 300;

    private static readonly Tone[] Tones = [Tone.Main, Tone.Alert, Tone.Second, Tone.Ink];

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="lines">Options over the same values, at least two of them; the least frequent first.</param>
    /// <param name="axis">What the values are, for the axis.</param>
    /// <param name="stated">The stated value; null for none.</param>
    /// <param name="words">The same in words.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<AcceptabilityLine> lines, string axis, double? stated, string words)
    {
        var (from, to) = (lines[0].Points[0].Value, lines[0].Points[^1].Value);
        var top = Math.Min(1, Math.Max(0.1, 1.08 * lines.Max(line => line.Most)));
        var horizontal = new Axis(axis, from, to, Ticks.Numbers(from, to), Lines: false);
        var ticks = Ticks.PerCent(top);
        var above = stated is null ? 0 : PictureArea.Line;
        var vertical = new Axis("draws in which it is the best", -0.01 * top, top * (1 + (above / Plot)), ticks);
        var height = (int)(Plot + above + PictureArea.Top + 52);
        var area = new PictureArea(horizontal, vertical, height);
        var places = new LabelPlaces(area);
        places.KeepTop(above);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        if (stated is { } value && value >= from && value <= to)
        {
            var end = top * (1 + (0.6 * PictureArea.Line / Plot));
            marks.Add(new LineMark([(value, 0), (value, end)], Tone.Ink, 1.6, Dashed: true));
            marks.Add(new LabelMark(value, end, words, area.Pixel(value, 0).X + ChartText.Measure(words, true) + 12 > area.Left + area.Wide ? LabelSide.Left : LabelSide.Right, Tone.Ink, Strong: true));
            places.KeepLine((value, 0), (value, top));
        }

        for (var index = 0; index < lines.Length; index++)
        {
            var (line, tone) = (lines[index], ToneOf(lines[index], index));
            marks.Add(new LineMark([.. line.Points.Select(point => (point.Value, point.Share))], tone, 1.6, Dashed: index >= Tones.Length && line.Most >= NamedFrom));
            foreach (var run in Runs(line)) marks.Add(new LineMark(run, tone, 4.5));
            places.KeepLine([.. line.Points.Select(point => (point.Value, point.Share))]);
        }

        // The most likely first: it has the choice of places.
        foreach (var (line, index) in lines.Select((line, index) => (line, index)).Where(one => one.line.Most >= NamedFrom).OrderByDescending(one => one.line.Most))
        {
            if (Name(places, area, line, ToneOf(line, index)) is { } label) marks.Add(label);
        }

        var unnamed = lines.Any(line => !marks.OfType<LabelMark>().Any(label => label.Text == line.Name));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(lines.Any(line => line.Points.Any(point => point.Chosen)), unnamed), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    private static Tone ToneOf(AcceptabilityLine line, int index) => line.Most < NamedFrom ? Tone.Unknown : Tones[index % Tones.Length];

    /// <summary>The stretches over which an option is the one to choose.</summary>
    private static IEnumerable<ImmutableArray<(double, double)>> Runs(AcceptabilityLine line)
    {
        var run = ImmutableArray.CreateBuilder<(double, double)>();
        foreach (var (value, share, chosen) in line.Points)
        {
            if (chosen) run.Add((value, share));
            if (chosen || run.Count == 0) continue;
            yield return run.Count > 1 ? run.ToImmutable() : Point(run[0], value);
            run.Clear();
        }

        if (run.Count > 1) yield return run.ToImmutable();
    }

    /// <summary>A stretch of one value only is drawn a third of the way to the next one, so that it is seen.</summary>
    private static ImmutableArray<(double, double)> Point((double Value, double Share) at, double next) => [at, (at.Value + ((next - at.Value) / 3), at.Share)];

    /// <summary>The name stands at the line's top, else where there is room along it, from its top outwards.</summary>
    private static LabelMark? Name(LabelPlaces places, PictureArea area, AcceptabilityLine line, Tone tone)
    {
        var top = line.Points.IndexOf(line.Points.MaxBy(point => point.Share));
        foreach (var off in (ReadOnlySpan<double>)[0, 6, 12, -8, 20, -18])
        {
            foreach (var index in Enumerable.Range(0, line.Points.Length).Where(index => line.Points[index].Share >= 0.6 * line.Most).OrderBy(index => Math.Abs(index - top)))
            {
                var (value, share, _) = line.Points[index];
                var y = area.YAt(area.Pixel(value, share).Y - off);
                if (places.Place(value, y, line.Name, tone, line.IsJudged) is { } label) return label;
            }
        }

        return null;
    }

    private static string Reading(bool chosen, bool unnamed) =>
        (chosen ? " Thick: the one to choose, best on average." : "") + " At each value the shares of all options together are 100 %. The best on average need not be the one most often best; a share below one half does not speak against it."
        + (unnamed ? " Pale or without a name: options that are seldom the best, in the table." : "");
}
