using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>First sentences of captions: what to see in a picture, with the figures that it shows.</summary>
internal static class See
{
    /// <summary>Which of the points stands highest, and whether that is more than chance around the whole.</summary>
    /// <param name="point">The highest point, as drawn.</param>
    /// <param name="share">Its share.</param>
    /// <param name="path">Where the share stands in findings.json.</param>
    /// <param name="name">Its name, with where that stands.</param>
    /// <param name="whole">The share of the whole, with where it stands; null for none.</param>
    /// <param name="of">What the whole is called: "the whole program".</param>
    /// <param name="line">What is drawn for the whole: "dashed line".</param>
    public static Caption Highest(ChartPoint point, ProportionFinding share, string path, FigureReference name, (double Value, string Path)? whole, string of, string line = "dashed line") =>
        Extreme("highest", "", point, share, path, name, whole, of, line, point.Lower <= whole?.Value);

    /// <summary>Which of the points stands lowest, and whether that is more than chance around the whole.</summary>
    /// <param name="among">Of which points it is spoken: ends in a comma and a space, or empty for all.</param>
    /// <param name="point">The lowest point, as drawn.</param>
    /// <param name="share">Its share.</param>
    /// <param name="path">Where the share stands in findings.json.</param>
    /// <param name="name">Its name, with where that stands.</param>
    /// <param name="whole">The share of the whole, with where it stands; null for none.</param>
    public static Caption Lowest(string among, ChartPoint point, ProportionFinding share, string path, FigureReference name, (double Value, string Path)? whole) =>
        Extreme("lowest", among, point, share, path, name, whole, "the whole program", "dashed line", point.Upper >= whole?.Value);

    private static Caption Extreme(
        string which, string among, ChartPoint point, ProportionFinding share, string path, FigureReference name, (double Value, string Path)? whole, string of, string line, bool reaches)
    {
        ImmutableArray<FigureReference> figures =
            [name, Share(path + ".estimate", share.Estimate), Share(path + ".widenedLower", share.WidenedLower), Share(path + ".widenedUpper", share.WidenedUpper)];
        return whole is not { } all
            ? new Sentence(among + "{0} is " + which + ": {1} (limits {2} to {3}).", figures)
            : new Sentence(
                among + "{0} is " + which + ": {1} (limits {2} to {3}) against {4} of " + of + (reaches && point.Flagged ? $"; its limits reach the {line}, yet it is flagged, by a test against the others."
                    : reaches ? $"; its limits reach the {line}: no difference to act on."
                    : point.Flagged ? $"; its limits do not reach the {line}, and it is flagged."
                    : $"; its limits do not reach the {line}, but the {which} of several easily stands out by chance."),
                [.. figures, Share(all.Path, all.Value)]);
    }

    /// <summary>A share as a figure.</summary>
    public static FigureReference Share(string path, double? value) => new(path, Cell.NumberOr(value, "nothing was counted"), Unit.Proportion);
}
