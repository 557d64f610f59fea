using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>The average cost for each effect beside that of the last step, option by option, on an axis of powers of ten: what an average hides.</summary>
internal static class MarginChart
{
    private const double Row = 64;
    private const double Apart = 0.24;

    // A lower limit may come to nothing, which an axis of powers of ten does not have: limits are cut this far below the least figure.
    private const double Below = 20;
    private const double Above = 20;
    private const int MostTicks = 5;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="rows">Options, the least frequent first; figures above 0, at least one.</param>
    /// <param name="axis">What is measured, for the axis.</param>
    /// <param name="print">Prints an amount.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<MarginRow> rows, string axis, Func<double, string> print)
    {
        (double Estimate, double Lower, double Upper)[] all = [.. rows.SelectMany(row => new[] { row.Average, row.Last }).OfType<(double, double, double)>()];
        var (least, most) = (all.Min(one => one.Estimate), all.Max(one => one.Estimate));
        var from = 0.8 * Math.Max(all.Min(one => one.Lower), least / Below);
        var to = 1.6 * Math.Min(all.Max(one => one.Upper), most * Above);
        var horizontal = new Axis(axis, from, to, Places(from, to), AxisScale.Logarithmic);
        ImmutableArray<Tick> names = [.. rows.Select((row, index) => new Tick(rows.Length - 1 - index, ChartText.Name(row.Name)))];
        var vertical = new Axis("", -0.5, rows.Length - 0.4, names, Lines: false);
        var height = (int)(PictureArea.Top + 52 + (Row * (vertical.To - vertical.From)));
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        var cut = false;
        for (var index = 0; index < rows.Length; index++)
        {
            var at = rows.Length - 1 - index;
            // The first of each says what it is.
            if (rows[index].Average is { } average) cut |= Add(marks, average, at + Apart, (from, to), Tone.Second, DotShape.Hollow, area, print, Array.FindIndex([.. rows], row => row.Average is not null) == index ? ": average over all of it" : "");
            if (rows[index].Last is { } last) cut |= Add(marks, last, at - Apart, (from, to), Tone.Main, DotShape.Filled, area, print, Array.FindIndex([.. rows], row => row.Last is not null) == index ? ": of the last step" : "");
        }

        return new Chart(
            frame.Id, frame.Title,
            frame.Caption + " Lines: the limits." + (cut ? " Where one ends at the edge it goes on, to the limit in the table." : "") + " The axis goes by powers of ten: each step to the right multiplies.",
            frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>Powers of ten, with steps between them only where these are few.</summary>
    private static ImmutableArray<Tick> Places(double from, double to)
    {
        var ticks = Ticks.PowersOfTen(from, to);
        var powers = ticks.Where(tick => Math.Abs(Math.Log10(tick.Position) - Math.Round(Math.Log10(tick.Position))) < 1e-9).ToImmutableArray();
        return ticks.Length > MostTicks && powers.Length > 1 ? powers : ticks;
    }

    private static bool Add(
        ImmutableArray<Mark>.Builder marks, (double Estimate, double Lower, double Upper) figure, double at, (double From, double To) ends, Tone tone, DotShape shape, PictureArea area, Func<double, string> print, string what)
    {
        var (low, high) = (Math.Max(figure.Lower, ends.From), Math.Min(figure.Upper, ends.To));
        if (high > low) marks.Add(new LineMark([(low, at), (high, at)], tone, 2.2));
        marks.Add(new DotMark(figure.Estimate, at, tone, shape, 11));
        // Beside the dot, above its line.
        var words = print(figure.Estimate) + what;
        var toRight = area.Left + area.Wide - area.Pixel(figure.Estimate, at).X > ChartText.Measure(words) + 12;
        marks.Add(new LabelMark(figure.Estimate, at, words, toRight ? LabelSide.AboveRight : LabelSide.AboveLeft, tone));
        return figure.Lower < ends.From || figure.Upper > ends.To;
    }
}
