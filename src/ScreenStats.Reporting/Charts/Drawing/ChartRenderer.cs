using ScottPlot;
using ScreenStats.Reporting.Charts.Model;
using SkiaSharp;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>Draws a chart with ScottPlot. The only place that knows the drawing library, with <see cref="ReportFont"/>.</summary>
internal static class ChartRenderer
{
    private const float TextSize = Chart.TextSize;

    // Even areas and thin lines: the filters that a photograph needs take more than half of the time here and make the file a quarter larger, and a level beyond 4 a fifth
    // more time for 2 percent less.
    private static readonly SKPngEncoderOptions Compression = new(SKPngEncoderFilterFlags.None, 4);

    /// <summary>The chart as SVG, finished as XML.</summary>
    public static string Svg(Chart chart)
    {
        using var plot = Draw(chart);
        return SvgFinish.Finish(plot.GetSvgXml(Chart.Width, chart.Height), chart);
    }

    /// <summary>The chart as PNG, two pixels for one.</summary>
    public static byte[] Png(Chart chart)
    {
        using var plot = Draw(chart);
        plot.ScaleFactor = 2;
        var (width, height) = (Chart.Width * 2, chart.Height * 2);
        // Paper lies under everything: said beforehand, nothing of transparency is kept, unmixed and packed.
        using var surface = SKSurface.Create(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque)) ?? throw new InvalidOperationException("There is no memory to draw a picture in.");
        plot.Render(surface.Canvas, width, height);
        using var pixels = surface.PeekPixels();
        using var data = pixels.Encode(Compression) ?? throw new InvalidOperationException("A picture could not be packed.");
        return data.ToArray();
    }

    private static Plot Draw(Chart chart)
    {
        ReportFont.Install();
        var plot = new Plot();
        plot.FigureBackground.Color = Color.FromHex(Palette.Paper);
        plot.DataBackground.Color = Color.FromHex(Palette.Paper);
        Margin(plot.Axes.Right, chart.Bare ? 0 : 26);
        Margin(plot.Axes.Top, chart.Bare ? 0 : 14);
        plot.Grid.IsVisible = false;
        Lines(plot, chart.Horizontal, upright: true);
        Lines(plot, chart.Vertical, upright: false);
        // Dashed lines last: the library leaves its brush dashed, and the SVG of a dot filled with it is refused with a message on standard error.
        foreach (var mark in chart.Marks.OrderBy(mark => mark is LineMark { Dashed: true } or RuleMark { Dashed: true })) Draw(plot, chart, mark);
        Style(plot.Axes.Bottom, chart.Horizontal);
        Style(plot.Axes.Left, chart.Vertical);
        plot.Axes.Left.FrameLineStyle.Width = 0;
        if (chart.Bare) plot.Layout.Frameless();
        plot.Axes.SetLimits(
            chart.Horizontal.Place(chart.Horizontal.From),
            chart.Horizontal.Place(chart.Horizontal.To),
            chart.Vertical.Place(chart.Vertical.From),
            chart.Vertical.Place(chart.Vertical.To));
        return plot;
    }

    /// <summary>An axis without a line or a label, kept as paper so that a mark or a label at the edge is not cut.</summary>
    private static void Margin(IAxis axis, float size)
    {
        axis.FrameLineStyle.Width = 0;
        axis.TickGenerator = new ScottPlot.TickGenerators.EmptyTickGenerator();
        axis.MinimumSize = size;
        axis.MaximumSize = size;
    }

    private static void Style(IAxis axis, Axis model)
    {
        axis.TickGenerator = new ScottPlot.TickGenerators.NumericManual(
            [.. model.Ticks.Select(tick => model.Place(tick.Position))], [.. model.Ticks.Select(tick => tick.Label)]);
        axis.TickLabelStyle.FontName = ReportFont.Name;
        axis.TickLabelStyle.FontSize = TextSize;
        axis.TickLabelStyle.ForeColor = Color.FromHex(Palette.Of(Tone.Ink));
        axis.MajorTickStyle.Length = 4;
        axis.MajorTickStyle.Color = Color.FromHex(Palette.Of(Tone.Quiet));
        axis.FrameLineStyle.Color = Color.FromHex(Palette.Of(Tone.Quiet));
        if (axis is not ScottPlot.AxisPanels.AxisBase panel) return;
        panel.LabelText = model.Label;
        panel.LabelFontName = ReportFont.Name;
        panel.LabelFontSize = TextSize;
        panel.LabelBold = false;
        panel.LabelFontColor = Color.FromHex(Palette.Of(Tone.Quiet));
    }

    private static void Lines(Plot plot, Axis axis, bool upright)
    {
        if (!axis.Lines) return;
        foreach (var tick in axis.Ticks)
        {
            var at = axis.Place(tick.Position);
            if (upright) plot.Add.VerticalLine(at, 1, Color.FromHex(Palette.Grid));
            else plot.Add.HorizontalLine(at, 1, Color.FromHex(Palette.Grid));
        }
    }

    private static void Draw(Plot plot, Chart chart, Mark mark)
    {
        switch (mark)
        {
            case IntervalMark interval: Interval(plot, chart, interval); break;
            case AtLeastMark least: AtLeast(plot, chart, least); break;
            case LineMark line: Line(plot, chart, line); break;
            case BandMark band: Band(plot, chart, band); break;
            case RuleMark rule: Rule(plot, chart, rule); break;
            case BarMark bar: Bar(plot, chart, bar); break;
            case DotMark dot: Dot(plot, chart, dot); break;
            case LabelMark label: Label(plot, chart, label); break;
            default: throw new InvalidOperationException($"No way to draw a {mark.GetType().Name}.");
        }
    }

    private static void Interval(Plot plot, Chart chart, IntervalMark mark)
    {
        var color = Color.FromHex(mark.Faded ? Palette.Faded(mark.Tone) : Palette.Of(mark.Tone));
        var width = mark.Faded ? 1.5f : 2.5f;
        Coordinates Where(double value) => mark.Upright
            ? new(chart.Horizontal.Place(mark.At), chart.Vertical.Place(value))
            : new(chart.Horizontal.Place(value), chart.Vertical.Place(mark.At));
        var line = plot.Add.Line(Where(mark.Lower), Where(mark.Upper));
        line.LineColor = color;
        line.LineWidth = width;
        if (mark.Cut)
        {
            var end = Where(mark.Upper);
            if (mark.Upright) plot.Add.Marker(end.X, end.Y, MarkerShape.OpenTriangleUp, 7, color);
            else ArrowHead(plot, end, color);
        }

        var at = Where(mark.Estimate);
        var shape = mark.Tone == Tone.Alert ? MarkerShape.FilledDiamond : MarkerShape.FilledCircle;
        var point = plot.Add.Marker(at.X, at.Y, shape, mark.Tone == Tone.Alert ? 11 : mark.Faded ? 6 : 8, color);
        if (mark.Faded)
        {
            point.MarkerStyle.FillColor = Color.FromHex(Palette.Paper);
            point.MarkerStyle.OutlineColor = color;
            point.MarkerStyle.OutlineWidth = 1.5f;
        }
    }

    private static void AtLeast(Plot plot, Chart chart, AtLeastMark mark)
    {
        var color = Color.FromHex(Palette.Faded(mark.Tone));
        var (from, to) = (chart.Horizontal.Place(mark.Lower), chart.Horizontal.Place(mark.Edge));
        foreach (var (start, end) in new[] { (new Coordinates(from, mark.At), new Coordinates(to, mark.At)), (new Coordinates(from, mark.At - 0.2), new Coordinates(from, mark.At + 0.2)) })
        {
            var line = plot.Add.Line(start, end);
            line.LineColor = color;
            line.LineWidth = 2;
        }

        if (mark.Open) ArrowHead(plot, new(to, mark.At), color);
    }

    /// <summary>The library has triangles that point up and down, none to the side.</summary>
    private static void ArrowHead(Plot plot, Coordinates end, Color color)
    {
        var head = plot.Add.Text(">", end);
        head.LabelFontName = ReportFont.Name;
        head.LabelFontSize = TextSize + 7;
        head.OffsetY = -2;
        head.LabelFontColor = color;
        head.LabelBold = true;
        head.LabelAlignment = Alignment.MiddleCenter;
    }

    private static void Line(Plot plot, Chart chart, LineMark mark)
    {
        var line = plot.Add.ScatterLine(
            mark.Points.Select(point => chart.Horizontal.Place(point.X)).ToArray(), mark.Points.Select(point => chart.Vertical.Place(point.Y)).ToArray());
        line.Color = Color.FromHex(Palette.Of(mark.Tone));
        line.LineWidth = (float)mark.Width;
        if (mark.Dashed) line.LinePattern = LinePattern.Dashed;
    }

    private static void Band(Plot plot, Chart chart, BandMark mark)
    {
        var band = plot.Add.FillY(
            [.. mark.Points.Select(point => chart.Horizontal.Place(point.X))],
            [.. mark.Points.Select(point => chart.Vertical.Place(point.Lower))],
            [.. mark.Points.Select(point => chart.Vertical.Place(point.Upper))]);
        band.FillColor = Color.FromHex(Palette.Of(mark.Tone)).WithAlpha(mark.Opacity);
        band.LineWidth = 0;
        band.MarkerSize = 0;
    }

    private static void Rule(Plot plot, Chart chart, RuleMark mark)
    {
        var color = Color.FromHex(Palette.Of(mark.Tone));
        var pattern = mark.Dashed ? LinePattern.Dashed : LinePattern.Solid;
        if (mark.Upright) plot.Add.VerticalLine(chart.Horizontal.Place(mark.At), 1.5f, color, pattern);
        else plot.Add.HorizontalLine(chart.Vertical.Place(mark.At), 1.5f, color, pattern);
    }

    private static void Bar(Plot plot, Chart chart, BarMark mark)
    {
        var box = plot.Add.Rectangle(
            chart.Horizontal.Place(mark.From), chart.Horizontal.Place(mark.To), mark.At - (mark.Thickness / 2), mark.At + (mark.Thickness / 2));
        box.FillColor = Color.FromHex(Palette.Of(mark.Tone));
        box.LineColor = Color.FromHex(Palette.Paper);
        box.LineWidth = 1;
    }

    private static void Dot(Plot plot, Chart chart, DotMark mark)
    {
        var color = Color.FromHex(mark.Faded ? Palette.Faded(mark.Tone) : Palette.Of(mark.Tone));
        var shape = mark.Shape switch
        {
            DotShape.Diamond or DotShape.HollowDiamond => MarkerShape.FilledDiamond,
            DotShape.Square => MarkerShape.FilledSquare,
            DotShape.TriangleUp => MarkerShape.FilledTriangleUp,
            DotShape.TriangleDown => MarkerShape.FilledTriangleDown,
            _ => MarkerShape.FilledCircle,
        };
        var dot = plot.Add.Marker(chart.Horizontal.Place(mark.X), chart.Vertical.Place(mark.Y), shape, (float)mark.Size, color);
        if (mark.Shape is not (DotShape.Hollow or DotShape.HollowDiamond)) return;
        dot.MarkerStyle.FillColor = Color.FromHex(Palette.Paper);
        dot.MarkerStyle.OutlineColor = color;
        dot.MarkerStyle.OutlineWidth = 1.5f;
    }

    private static void Label(Plot plot, Chart chart, LabelMark mark)
    {
        var text = plot.Add.Text(mark.Text, chart.Horizontal.Place(mark.X), chart.Vertical.Place(mark.Y));
        text.LabelFontName = ReportFont.Name;
        text.LabelFontSize = mark.Size;
        text.LabelFontColor = Color.FromHex(Palette.Of(mark.Tone));
        text.LabelBold = mark.Strong;
        if (mark.Backed)
        {
            text.LabelBackgroundColor = Color.FromHex(Palette.Paper);
            text.LabelPadding = 2;
        }

        (text.LabelAlignment, text.OffsetX, text.OffsetY) = mark.Side switch
        {
            LabelSide.Right => (Alignment.MiddleLeft, LabelMark.Beside, 0f),
            LabelSide.Left => (Alignment.MiddleRight, -LabelMark.Beside, 0f),
            LabelSide.AboveRight => (Alignment.LowerLeft, 4f, -3f),
            LabelSide.AboveLeft => (Alignment.LowerRight, -4f, -3f),
            LabelSide.BelowRight => (Alignment.UpperLeft, 4f, 6f),
            LabelSide.BelowLeft => (Alignment.UpperRight, -4f, 6f),
            _ => (Alignment.MiddleCenter, 0f, 0f),
        };
    }
}
