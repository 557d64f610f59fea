using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>Finds for each name a side of its point where it covers neither another name nor a point that must be seen, nor runs over the edge.</summary>
/// <param name="area">Where things are drawn.</param>
internal sealed class LabelPlaces(PictureArea area)
{
    private const double High = 17;

    private static readonly LabelSide[] Sides = [LabelSide.Right, LabelSide.Left, LabelSide.AboveRight, LabelSide.AboveLeft, LabelSide.BelowRight, LabelSide.BelowLeft];

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

    /// <summary>Keeps names off the uppermost lines of the picture, where its words on how to read it stand.</summary>
    public void KeepTop(double pixels) => taken.Add((0, 0, Chart.Width, PictureArea.Top + pixels));

    /// <summary>A label beside a place, or null where there is room on no side.</summary>
    public LabelMark? Place(double x, double y, string text, Tone tone = Tone.Ink, bool strong = false)
    {
        foreach (var side in Sides)
        {
            var box = Box(x, y, text, side, strong);
            if (box.Left < area.Left || box.Right > area.Left + area.Wide || box.Top < PictureArea.Top || box.Bottom > area.Height - area.Bottom) continue;
            if (taken.Exists(other => box.Left < other.Right && other.Left < box.Right && box.Top < other.Bottom && other.Top < box.Bottom)) continue;
            taken.Add(box);
            return new LabelMark(x, y, text, side, tone, strong);
        }

        return null;
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
