using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>How to read the marks, in the picture itself, above what is drawn: each mark with its word.</summary>
internal static class Legend
{
    private const double Sample = 28;
    private const double Gap = 18;

    /// <summary>Room that it needs above what is drawn, in pixels.</summary>
    /// <param name="items">Marks with their words.</param>
    /// <param name="wide">Room from left to right.</param>
    public static double Room(IReadOnlyList<LegendItem> items, double wide) => items.Count == 0 ? 0 : 6 + (PictureArea.Line * (1 + Rows(items, wide).Max(place => place.Row)));

    /// <summary>Its marks, in the uppermost part of the picture.</summary>
    public static IEnumerable<Mark> Marks(IReadOnlyList<LegendItem> items, PictureArea area)
    {
        foreach (var (item, row, from) in Rows(items, area.Wide))
        {
            var left = area.Left + from;
            var y = area.YAt(PictureArea.Top + 8 + (PictureArea.Line * row));
            var (start, middle, end) = (area.XAt(left), area.XAt(left + (Sample / 2)), area.XAt(left + Sample));
            if (item.Line is { } line) yield return line with { Points = [(start, y), (end, y)] };
            if (item.Band is { } band)
            {
                var (low, high) = (area.YAt(PictureArea.Top + 14 + (PictureArea.Line * row)), area.YAt(PictureArea.Top + 2 + (PictureArea.Line * row)));
                yield return band with { Points = [(start, low, high), (end, low, high)] };
            }

            if (item.Dot is { } dot) yield return dot with { X = middle, Y = y };
            yield return new LabelMark(item.Line is null && item.Band is null ? middle : area.XAt(left + Sample - 4), y, item.Words, LabelSide.Right, Tone.Quiet);
        }
    }

    private static ImmutableArray<(LegendItem Item, int Row, double From)> Rows(IReadOnlyList<LegendItem> items, double wide)
    {
        var places = ImmutableArray.CreateBuilder<(LegendItem, int, double)>();
        var (row, from) = (0, 0.0);
        foreach (var item in items)
        {
            var needs = Sample + 6 + ChartText.Measure(item.Words);
            if (from > 0 && from + needs > wide) (row, from) = (row + 1, 0);
            places.Add((item, row, from));
            from += needs + Gap;
        }

        return places.ToImmutable();
    }
}
