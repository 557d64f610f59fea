using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Flagging;
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
    /// <param name="known">What the report itself knows of why it stands so high; null for nothing, so that chance may be named.</param>
    public static Caption Highest(
        ChartPoint point, ProportionFinding share, string path, FigureReference name, (double Value, string Path)? whole, string of, string line = "dashed line", Sentence? known = null) =>
        Extreme("highest", "", point, share, path, name, whole, of, line, point.Lower <= whole?.Value, known);

    /// <summary>What is left of a lot or a site without the runs of what is flagged and was taken out before it was judged; null where nothing was taken out.</summary>
    /// <param name="path">Where its row stands in findings.json, with the name of its test.</param>
    /// <param name="test">The test.</param>
    /// <param name="all">All its trials.</param>
    /// <param name="taken">What was taken out: "flagged sites".</param>
    /// <param name="events">What its events are: "unusable".</param>
    /// <param name="trials">What its trials are: "runs".</param>
    public static Sentence? Without(string path, FlagTest test, long all, string taken, string events, string trials) =>
        test.PUndefined is not null || test.Trials >= all ? null
        : new Sentence(
            $"Without the runs of {taken} {{0}} of its {{1}} {trials} {(test.Events == 1 ? "is" : "are")} {events}" + (test.Flagged ? "." : ", and it is not flagged."),
            new FigureReference(path + ".events", Cell.Count(test.Events), Unit.Count), new FigureReference(path + ".trials", Cell.Count(test.Trials), Unit.Count));

    /// <summary>Which of the points stands lowest, and whether that is more than chance around the whole.</summary>
    /// <param name="among">Of which points it is spoken: ends in a comma and a space, or empty for all.</param>
    /// <param name="point">The lowest point, as drawn.</param>
    /// <param name="share">Its share.</param>
    /// <param name="path">Where the share stands in findings.json.</param>
    /// <param name="name">Its name, with where that stands.</param>
    /// <param name="whole">The share of the whole, with where it stands; null for none.</param>
    public static Caption Lowest(string among, ChartPoint point, ProportionFinding share, string path, FigureReference name, (double Value, string Path)? whole) =>
        Extreme("lowest", among, point, share, path, name, whole, "the whole program", "dashed line", point.Upper >= whole?.Value, null);

    private static Caption Extreme(
        string which, string among, ChartPoint point, ProportionFinding share, string path, FigureReference name, (double Value, string Path)? whole, string of, string line, bool reaches, Sentence? known)
    {
        ImmutableArray<FigureReference> figures =
            [name, Share(path + ".estimate", share.Estimate), Share(path + ".widenedLower", share.WidenedLower), Share(path + ".widenedUpper", share.WidenedUpper)];
        if (whole is not { } all) return new Sentence(among + "{0} is " + which + ": {1} (limits {2} to {3}).", figures);
        Caption caption = new Sentence(
                among + "{0} is " + which + ": {1} (limits {2} to {3}) against {4} of " + of + (reaches && point.Flagged ? $"; its limits reach the {line}, yet it is flagged, by a test against the others."
                    : reaches ? $"; its limits reach the {line}: no difference to act on."
                    : point.Flagged ? $"; its limits do not reach the {line}, and it is flagged."
                    : known is not null ? $"; its limits do not reach the {line}."
                    : $"; its limits do not reach the {line}, but the {which} of several easily stands out by chance."),
                [.. figures, Share(all.Path, all.Value)]);
        return known is null || reaches || point.Flagged ? caption : caption + known;
    }

    /// <summary>A share as a figure.</summary>
    public static FigureReference Share(string path, double? value) => new(path, Cell.NumberOr(value, "nothing was counted"), Unit.Proportion);
}
