using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

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

        foreach (var (name, at) in places.Where(place => place.At >= from && place.At <= to))
        {
            marks.Add(new RuleMark(at, Upright: true));
            marks.Add(new LabelMark(at, 0.015, $"{name} {Rounding.Print(Cell.Number(at), Unit.Proportion)}", at > Math.Sqrt(from * to) ? LabelSide.AboveLeft : LabelSide.AboveRight, Tone.Quiet));
            foreach (var line in lines)
            {
                if (line.ValueAt(at) is not { } value) continue;
                marks.Add(new DotMark(at, value, line.Tone));
                marks.Add(new LabelMark(at, value, Rounding.Print(Cell.Number(value), Unit.Proportion), Beside(value, at > Math.Sqrt(from * to)), line.Tone, Strong: true));
            }
        }

        foreach (var line in lines) marks.Add(Name(line));

        return new Chart(
            frame.Id, frame.Title, frame.Caption + " Shaded: limits. Each step to the right is ten times the prevalence.",
            frame.Description, frame.TableId,
            new Axis("share infected among those screened", from, to, Ticks.PowersOfTenPerCent(from, to), AxisScale.Logarithmic),
            new Axis("", 0, 1.09, Ticks.PerCent(1)),
            marks.ToImmutable(), 380);
    }

    private static LabelSide Beside(double value, bool left) =>
        value > 0.9 ? left ? LabelSide.AboveLeft : LabelSide.AboveRight : left ? LabelSide.Left : LabelSide.Right;

    /// <summary>The name of a curve stands off the curve: to the right of a rising one, below a falling one.</summary>
    private static LabelMark Name(CurveLine line)
    {
        if (line.Points[^1].Value > line.Points[0].Value)
        {
            foreach (var point in line.Points)
            {
                if (point.Lower >= 0.6) return new LabelMark(point.At, point.Lower - 0.03, line.Name, LabelSide.Right, line.Tone, Strong: true);
            }

            return new LabelMark(line.Points[^1].At, line.Points[^1].Upper, line.Name, LabelSide.AboveLeft, line.Tone, Strong: true);
        }

        return new LabelMark(line.Points[^1].At, Math.Min(0.9, line.Points[^1].Lower), line.Name, LabelSide.Left, line.Tone, Strong: true);
    }
}
