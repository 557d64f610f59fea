using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>Names options on the plane beside their points, or farther off with a thin line to them, off all lines and bars.</summary>
internal sealed class PlaneLabels
{
    private const double Step = 9;
    private const int Farthest = 14;

    private static readonly (double X, double Y)[] Ways = [(0.7, 1), (-0.7, -1), (0.7, -1), (-0.7, 1), (0, -1), (0, 1), (1, 0), (-1, 0)];

    private readonly PictureArea area;
    private readonly LabelPlaces places;

    /// <summary>Prepares for a picture.</summary>
    /// <param name="area">Where things are drawn.</param>
    public PlaneLabels(PictureArea area)
    {
        this.area = area;
        places = new LabelPlaces(area);
    }

    /// <summary>Keeps names off a line.</summary>
    public void Keep(double x0, double y0, double x1, double y1) => places.KeepLine((x0, y0), (x1, y1), 3);

    /// <summary>Writes the name of a line that is kept off already.</summary>
    public void Along(ImmutableArray<Mark>.Builder marks, ImmutableArray<(double X, double Y)> line, string words)
    {
        if (places.Along(line, words, Tone.Main) is { } label) marks.Add(label);
    }

    /// <summary>Keeps names off the mark of an option.</summary>
    public void Keep(PlanePoint option) => places.Keep(option.Effect, option.Cost, option.IsPlain ? 9 : 13);

    /// <summary>Says what the line of the stated value is, as far along it as there is room.</summary>
    public void AlongLine(ImmutableArray<Mark>.Builder marks, double value, double to, string words)
    {
        for (var share = 0.97; share > 0.2; share -= 0.03)
        {
            if (places.Place(share * to, share * to * value, words, Tone.Ink) is not { } label) continue;
            marks.Add(label);
            return;
        }
    }

    /// <summary>Writes the names: those that are spoken of first, then those on the frontier.</summary>
    /// <returns>How many were written.</returns>
    public int Write(ImmutableArray<Mark>.Builder marks, ImmutableArray<PlanePoint> options)
    {
        var written = 0;
        var told = false;
        foreach (var option in options.OrderBy(option => option.IsPlain).ThenByDescending(option => option.OnFrontier).ThenBy(option => option.Effect).ThenBy(option => option.Name, StringComparer.Ordinal))
        {
            // The first that is dominated says so.
            var words = option.OnFrontier || told ? option.Words : option.Words + ", dominated";
            if ((Place(option, words) ?? Place(option, option.Words)) is not { } place) continue;
            told |= place.Label.Text != option.Words;
            if (place.Line is { } line) marks.Add(line);
            marks.Add(place.Label);
            written++;
        }

        return written;
    }

    private (LabelMark Label, LineMark? Line)? Place(PlanePoint option, string words)
    {
        var (strong, tone) = (!option.IsPlain, option.Standing.HasFlag(PlaneStanding.Best) ? Tone.Alert : Tone.Ink);
        if (places.Place(option.Effect, option.Cost, words, tone, strong) is { } beside) return (beside with { Backed = option.IsPlain }, null);
        var (left, top) = area.Pixel(option.Effect, option.Cost);
        for (var step = 1; step <= Farthest; step++)
        {
            foreach (var (across, down) in Ways)
            {
                var (at, height) = (left + (Step * step * across), top + (Step * step * down));
                if (at < area.Left || at > area.Left + area.Wide || height > area.Height - area.Bottom) continue;
                var (x, y) = (area.XAt(at), area.YAt(height));
                if (places.Place(x, y, words, tone, strong) is not { } label) continue;
                return (label with { Backed = option.IsPlain }, new LineMark([(option.Effect, option.Cost), (x, y)], Tone.Quiet, 1));
            }
        }

        return null;
    }
}
