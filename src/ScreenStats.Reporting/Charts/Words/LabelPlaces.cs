using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>Finds for each name a side of its point where it covers neither another name nor a point that must be seen, nor runs over the edge.</summary>
/// <param name="area">Where things are drawn.</param>
internal sealed class LabelPlaces(PictureArea area)
{
    private const double High = 17;

    private static readonly LabelSide[] Sides = [LabelSide.Right, LabelSide.Left, LabelSide.AboveRight, LabelSide.AboveLeft, LabelSide.BelowRight, LabelSide.BelowLeft];

    private static readonly LabelSide[] Beside = [LabelSide.AboveLeft, LabelSide.BelowLeft, LabelSide.AboveRight, LabelSide.BelowRight];

    private readonly List<(double Left, double Top, double Right, double Bottom)> taken = [];

    /// <summary>Keeps names off a mark.</summary>
    /// <param name="x">Its place.</param>
    /// <param name="y">Its place.</param>
    /// <param name="size">Its width in pixels.</param>
    public void Keep(double x, double y, double size)
    {
        var (left, top) = area.Pixel(x, y);
        taken.Add((left - (size / 2), top - (size / 2), left + (size / 2), top + (size / 2)));
    }

    /// <summary>Keeps names off words that stand there already.</summary>
    public void Keep(LabelMark label) => taken.Add(Box(label.X, label.Y, label.Text, label.Side, label.Strong));

    /// <summary>Keeps names off the uppermost lines of the picture, where its words on how to read it stand.</summary>
    public void KeepTop(double pixels) => taken.Add((0, 0, Chart.Width, PictureArea.Top + pixels));

    /// <summary>Keeps names off a line between two places.</summary>
    public void KeepLine((double X, double Y) from, (double X, double Y) to, double size = 4)
    {
        var ((x0, y0), (x1, y1)) = (area.Pixel(from.X, from.Y), area.Pixel(to.X, to.Y));
        var many = Math.Max(1, (int)(Math.Max(Math.Abs(x1 - x0), Math.Abs(y1 - y0)) / 4));
        for (var index = 0; index <= many; index++)
        {
            var share = (double)index / many;
            var (x, y) = (x0 + (share * (x1 - x0)), y0 + (share * (y1 - y0)));
            taken.Add((x - (size / 2), y - (size / 2), x + (size / 2), y + (size / 2)));
        }
    }

    /// <summary>Keeps names off a line through points.</summary>
    public void KeepLine(IReadOnlyList<(double X, double Y)> line, double size = 4)
    {
        for (var index = 1; index < line.Count; index++) KeepLine(line[index - 1], line[index], size);
    }

    /// <summary>The name of a line, beside it and as far to the right as there is room; null where there is none. The line itself is to be kept off before.</summary>
    /// <param name="line">Its points from left to right.</param>
    /// <param name="text">The name.</param>
    /// <param name="tone">What it speaks of.</param>
    /// <param name="strong">Whether it is drawn strong.</param>
    public LabelMark? Along(IReadOnlyList<(double X, double Y)> line, string text, Tone tone, bool strong = false)
    {
        for (var step = 40; step >= 0; step--)
        {
            var x = line[0].X + (step / 40.0 * (line[^1].X - line[0].X));
            var y = HeightAt(line, x);
            foreach (var side in Beside)
            {
                if (Place(x, y, text, tone, strong, side) is { } label) return label;
            }
        }

        return null;
    }

    /// <summary>The height of a line at a place across.</summary>
    /// <param name="line">Its points from left to right, at least two.</param>
    /// <param name="x">The place, within the line.</param>
    public static double HeightAt(IReadOnlyList<(double X, double Y)> line, double x)
    {
        var next = 1;
        while (next < line.Count - 1 && line[next].X < x) next++;
        var (from, to) = (line[next - 1], line[next]);
        return to.X == from.X ? to.Y : from.Y + ((x - from.X) / (to.X - from.X) * (to.Y - from.Y));
    }

    /// <summary>A label beside a place, or null where there is room on no side.</summary>
    public LabelMark? Place(double x, double y, string text, Tone tone = Tone.Ink, bool strong = false)
    {
        foreach (var side in Sides)
        {
            if (Place(x, y, text, tone, strong, side) is { } label) return label;
        }

        return null;
    }

    private LabelMark? Place(double x, double y, string text, Tone tone, bool strong, LabelSide side)
    {
        var box = Box(x, y, text, side, strong);
        if (box.Left < area.Left || box.Right > area.Left + area.Wide || box.Top < PictureArea.Top || box.Bottom > area.Height - area.Bottom) return null;
        if (taken.Exists(other => box.Left < other.Right && other.Left < box.Right && box.Top < other.Bottom && other.Top < box.Bottom)) return null;
        taken.Add(box);
        return new LabelMark(x, y, text, side, tone, strong);
    }

    private (double Left, double Top, double Right, double Bottom) Box(double x, double y, string text, LabelSide side, bool strong)
    {
        var (left, top) = area.Pixel(x, y);
        var width = ChartText.Measure(text, strong);
        return side switch
        {
            LabelSide.Right => (left + 7, top - (High / 2), left + 8 + width, top + (High / 2)),
            LabelSide.Left => (left - 8 - width, top - (High / 2), left - 7, top + (High / 2)),
            LabelSide.AboveRight => (left + 3, top - 5 - High, left + 4 + width, top - 5),
            LabelSide.AboveLeft => (left - 4 - width, top - 5 - High, left - 3, top - 5),
            LabelSide.BelowRight => (left + 3, top + 6, left + 4 + width, top + 6 + High),
            _ => (left - 4 - width, top + 6, left - 3, top + 6 + High),
        };
    }
}
