using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts;

/// <summary>Curves against prevalence on a logarithmic axis, with places marked.</summary>
internal static class CurveChart
{
    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="lines">Curves over the same places, all above 0; at least one of at least two places.</param>
    /// <param name="places">Marked places: a name and a prevalence.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<CurveLine> lines, ImmutableArray<(string Name, double At)> places)
    {
        var from = lines.Min(line => line.Points[0].At);
        var to = lines.Max(line => line.Points[^1].At);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var line in lines)
        {
            if (line.Points.Any(point => point.Upper > point.Lower)) marks.Add(new BandMark([.. line.Points.Select(point => (point.At, point.Lower, point.Upper))], line.Tone));
        }

        foreach (var line in lines)
        {
            marks.Add(new LineMark([.. line.Points.Select(point => (point.At, point.Value))], line.Tone, 2.5, Dashed: line.Tone == Tone.Second));
        }

        // Words stand off the curves: places in rows above them, values above a rising curve and below a falling one.
        var marked = places.Where(place => place.At >= from && place.At <= to).OrderBy(place => place.At).ToArray();
        for (var index = 0; index < marked.Length; index++)
        {
            var (name, at) = marked[index];
            var right = at > Math.Sqrt(from * to);
            marks.Add(new RuleMark(at, Upright: true));
            marks.Add(new LabelMark(
                at, 1.1 + (0.085 * index), $"{name} {Rounding.Print(Cell.Number(at), Unit.Proportion)}", right ? LabelSide.Left : LabelSide.Right, Tone.Quiet));
            foreach (var line in lines)
            {
                if (line.ValueAt(at) is not { } value) continue;
                marks.Add(new DotMark(at, value, line.Tone));
                var side = Rises(line) ? LabelSide.AboveLeft : marked.Length > 1 && index == marked.Length - 1 ? LabelSide.BelowRight : LabelSide.BelowLeft;
                marks.Add(new LabelMark(at, value, Rounding.Print(Cell.Number(value), Unit.Proportion), side, line.Tone, Strong: true));
            }
        }

        foreach (var line in lines) marks.Add(Name(line, [.. marked.Select(place => place.At)], from, to));
        var top = 1.06 + (0.085 * marked.Length);
        return new Chart(
            frame.Id, frame.Title, frame.Caption + " Shaded: limits. Each step to the right is ten times the prevalence.",
            frame.Description, frame.TableId,
            new Axis("share infected among those screened", from, to, Ticks.PowersOfTenPerCent(from, to), AxisScale.Logarithmic),
            new Axis("", 0, top, Ticks.PerCent(1)),
            marks.ToImmutable(), (int)(330 * top));
    }

    private static bool Rises(CurveLine line) => line.Points[^1].Value > line.Points[0].Value;

    /// <summary>The name of a curve stands to the right of a rising one, where no marked place runs through it, and below the beginning of a falling one.</summary>
    private static LabelMark Name(CurveLine line, double[] places, double from, double to)
    {
        if (!Rises(line)) return new LabelMark(line.Points[0].At, line.Points[0].Lower, line.Name, LabelSide.BelowRight, line.Tone, Strong: true);
        var reach = Math.Pow(to / from, (ChartText.Width(line.Name) + 24) / (Chart.Width - 90));
        foreach (var height in (ReadOnlySpan<double>)[0.6, 0.5, 0.4, 0.7, 0.3, 0.2])
        {
            var point = line.Points.FirstOrDefault(point => point.Lower >= height);
            if (point.At > 0 && point.At * reach <= to && !places.Any(place => place > point.At && place < point.At * reach))
            {
                return new LabelMark(point.At, point.Lower - 0.02, line.Name, LabelSide.Right, line.Tone, Strong: true);
            }
        }

        return new LabelMark(to, Math.Max(0.05, line.Points[^1].Lower - 0.08), line.Name, LabelSide.Left, line.Tone, Strong: true);
    }
}
