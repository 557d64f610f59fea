using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>A mark with its word. Where the marks stand is of no matter here.</summary>
/// <param name="Words">What it means.</param>
internal sealed record LegendItem(string Words)
{
    /// <summary>A dot; null for none.</summary>
    public DotMark? Dot { get; init; }

    /// <summary>A line; null for none.</summary>
    public LineMark? Line { get; init; }

    /// <summary>A surface; null for none.</summary>
    public BandMark? Band { get; init; }

    /// <summary>A dot with its word.</summary>
    public static LegendItem OfDot(string words, Tone tone, DotShape shape, double size = 10, bool faded = false) => new(words) { Dot = new DotMark(0, 0, tone, shape, size, faded) };

    /// <summary>A line with its word.</summary>
    public static LegendItem OfLine(string words, Tone tone, double width = 1.5, bool dashed = false) => new(words) { Line = new LineMark([], tone, width, dashed) };
}
