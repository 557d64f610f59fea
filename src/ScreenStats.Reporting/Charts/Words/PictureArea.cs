using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>About where things are drawn in a picture, in pixels, so that words can be kept off each other and off the edge before anything is drawn.</summary>
/// <param name="Horizontal">Horizontal axis.</param>
/// <param name="Vertical">Vertical axis.</param>
/// <param name="Height">Height of the picture.</param>
internal sealed record PictureArea(Axis Horizontal, Axis Vertical, int Height)
{
    /// <summary>Paper above what is drawn.</summary>
    public const double Top = 14;

    /// <summary>Paper right of what is drawn.</summary>
    public const double Right = 26;

    /// <summary>Height of a line of words.</summary>
    public const double Line = 21;

    private const double LabelRoom = 24;

    /// <summary>Room for the labels left of what is drawn.</summary>
    public double Left => 14 + (Vertical.Label.Length > 0 ? LabelRoom : 0) + Vertical.Ticks.Select(tick => ChartText.Measure(tick.Label)).DefaultIfEmpty(0).Max();

    /// <summary>Room for the labels below it.</summary>
    public double Bottom => 28 + (Horizontal.Label.Length > 0 ? LabelRoom : 0);

    /// <summary>Width of what is drawn.</summary>
    public double Wide => Chart.Width - Left - Right;

    /// <summary>Height of what is drawn.</summary>
    public double High => Height - Top - Bottom;

    /// <summary>A place, from the left and from the top of the picture.</summary>
    public (double X, double Y) Pixel(double x, double y) => (
        Left + (Wide * Share(Horizontal, x)),
        Top + (High * (1 - Share(Vertical, y))));

    /// <summary>The value on the horizontal axis that is drawn so many pixels from the picture's left.</summary>
    public double XAt(double pixel) => Value(Horizontal, (pixel - Left) / Wide);

    /// <summary>The value on the vertical axis that is drawn so many pixels from the picture's top.</summary>
    public double YAt(double pixel) => Value(Vertical, 1 - ((pixel - Top) / High));

    private static double Share(Axis axis, double value) => (axis.Place(value) - axis.Place(axis.From)) / (axis.Place(axis.To) - axis.Place(axis.From));

    private static double Value(Axis axis, double share)
    {
        var place = axis.Place(axis.From) + (share * (axis.Place(axis.To) - axis.Place(axis.From)));
        return axis.Scale == AxisScale.Logarithmic ? Math.Pow(10, place) : place;
    }
}
