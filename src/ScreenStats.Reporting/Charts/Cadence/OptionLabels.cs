using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>Names options beside their points: at the point where there is room, else below or above its limits, with a thin line to them.</summary>
internal sealed class OptionLabels
{
    private const double Step = 7;
    private const int Farthest = 30;

    private readonly PictureArea area;
    private readonly LabelPlaces places;

    /// <summary>Keeps names off the line through the options, their limits and their marks.</summary>
    /// <param name="area">Where things are drawn.</param>
    /// <param name="line">The options of the line, by burden.</param>
    public OptionLabels(PictureArea area, ImmutableArray<OptionPoint> line)
    {
        this.area = area;
        places = new LabelPlaces(area);
        for (var index = 1; index < line.Length; index++) Keep(line[index - 1].Burden, line[index - 1].Gain, line[index].Burden, line[index].Gain);
    }

    /// <summary>Writes the names.</summary>
    /// <param name="marks">Where they are added.</param>
    /// <param name="options">All options.</param>
    /// <param name="most">At most so many.</param>
    public void Write(ImmutableArray<Mark>.Builder marks, ImmutableArray<OptionPoint> options, int most)
    {
        foreach (var option in options)
        {
            places.Keep(option.Burden, option.Gain, option.Standing == OptionStanding.None ? 8 : 13);
            Keep(option.Burden, option.Lower, option.Burden, option.Upper);
        }

        var written = 0;
        foreach (var option in options.OrderByDescending(option => option.Standing.HasFlag(OptionStanding.Chosen)).ThenByDescending(option => option.Standing != OptionStanding.None).ThenBy(option => option.Burden))
        {
            if (written == most) break;
            if (Place(option) is not { } place) continue;
            if (place.Line is { } line) marks.Add(line);
            marks.Add(place.Label);
            written++;
        }
    }

    private (LabelMark Label, LineMark? Line)? Place(OptionPoint option)
    {
        var text = option.Words(ChartText.Name(option.Name));
        var strong = option.Standing != OptionStanding.None;
        var tone = option.Standing.HasFlag(OptionStanding.Chosen) ? Tone.Alert : Tone.Ink;
        if (places.Place(option.Burden, option.Gain, text, tone, strong) is { } beside) return (beside, null);
        // No screening stands at 0, as the axis says: its name is worth no line across the picture.
        if (option.Burden == 0) return null;
        var (low, high) = (area.Pixel(0, option.Lower).Y, area.Pixel(0, option.Upper).Y);
        for (var step = 0; step <= Farthest; step++)
        {
            foreach (var (end, pixel) in (ReadOnlySpan<(double, double)>)[(option.Lower, low + (Step * step)), (option.Upper, high - (Step * step))])
            {
                var y = area.YAt(pixel);
                if (places.Place(option.Burden, y, text, tone, strong) is not { } label) continue;
                if (step < 2) return (label, null);
                Keep(option.Burden, end, option.Burden, y);
                return (label, new LineMark([(option.Burden, end), (option.Burden, y)], Tone.Quiet, 1));
            }
        }

        return null;
    }

    private void Keep(double x0, double y0, double x1, double y1)
    {
        var (from, to) = (area.Pixel(x0, y0), area.Pixel(x1, y1));
        var many = Math.Max(1, (int)(Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) / 4));
        for (var index = 0; index <= many; index++)
        {
            var share = (double)index / many;
            places.Keep(x0 + (share * (x1 - x0)), y0 + (share * (y1 - y0)), 4);
        }
    }
}
