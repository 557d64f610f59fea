using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>The plane of cost and effect: each option by what it gains and what it costs, along the frontier of those that are worth a thought.</summary>
internal static class PlaneChart
{
    private const double Plot = 360;

    // Limits may lie many times farther out than the options themselves: beyond this share of their spread a bar is cut at the edge.
    private const double Beyond = 0.35;

    // Options nearer together than this are at one place: an axis that tells them apart has no room beside its digits.
    private const double Least = 1e-6;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="options">At least two, not all of the same effect.</param>
    /// <param name="effect">What is gained, for the axis.</param>
    /// <param name="cost">In what costs are, for the axis.</param>
    /// <param name="value">What one effect is worth; null where that is not stated.</param>
    /// <param name="worth">The same in words, along the line below which an option pays.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<PlanePoint> options, string effect, string cost, double? value, string worth)
    {
        var (left, right) = Ends([.. options.Select(option => (option.Effect, option.EffectLower, option.EffectUpper)), (0, 0, 0)]);
        var (low, high) = Ends([.. options.Select(option => (option.Cost, option.CostLower, option.CostUpper)), (0, 0, 0)]);
        var horizontal = new Axis(effect, left, right, Ticks.Numbers(left, right), Lines: false);
        var ticks = Ticks.Numbers(low, high);
        var vertical = new Axis(cost, low, high, ticks);
        var height = (int)(Plot + PictureArea.Top + 52);
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        if (low < 0) marks.Add(new RuleMark(0, Upright: false, Tone.Quiet, Dashed: false));
        var labels = new PlaneLabels(area);
        if (value is { } one && one > 0)
        {
            // From no screening to where the line leaves the picture.
            var to = Math.Min(right, high / one);
            marks.Add(new LineMark([(0, 0), (to, one * to)], Tone.Ink, 1.6, Dashed: true));
            labels.Keep(0, 0, to, one * to);
        }

        var frontier = options.Where(option => option.OnFrontier).OrderBy(option => option.Effect).ThenBy(option => option.Cost).ToArray();
        for (var index = 1; index < frontier.Length; index++) labels.Keep(frontier[index - 1].Effect, frontier[index - 1].Cost, frontier[index].Effect, frontier[index].Cost);
        var cut = false;
        foreach (var option in options.OrderBy(option => option.IsPlain ? 0 : 1).ThenBy(option => option.Standing)) cut |= Limits(marks, labels, option, (left, right), (low, high));
        if (frontier.Length > 1) marks.Add(new LineMark([.. frontier.Select(option => (option.Effect, option.Cost))], Tone.Main, 2.2));
        foreach (var option in options.OrderBy(option => option.Standing))
        {
            marks.Add(new DotMark(option.Effect, option.Cost, Colour(option), Shape(option), option.IsPlain ? 9 : 14));
            labels.Keep(option);
        }

        if (value is { } stated && stated > 0) labels.AlongLine(marks, stated, Math.Min(right, high / stated), worth);
        var named = labels.Write(marks, options);
        if (frontier.Length > 1) labels.Along(marks, [.. frontier.Select(option => (option.Effect, option.Cost))], "frontier");
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(options, value > 0, cut, named < options.Length), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>The ends of an axis: all options and 0, and their limits as far as they do not lie much farther out.</summary>
    private static (double From, double To) Ends(ImmutableArray<(double At, double Lower, double Upper)> places)
    {
        var (least, most) = (places.Min(place => place.At), places.Max(place => place.At));
        var spread = most - least > Least ? most - least : Math.Max(1, Math.Abs(most));
        var from = Math.Max(places.Min(place => Math.Min(place.At, place.Lower)), least - (Beyond * spread));
        var to = Math.Min(places.Max(place => Math.Max(place.At, place.Upper)), most + (Beyond * spread));
        return (from - (0.03 * spread), to + (0.03 * spread));
    }

    /// <summary>Both limits of an option as bars, cut at the edge; whether one was cut.</summary>
    private static bool Limits(ImmutableArray<Mark>.Builder marks, PlaneLabels labels, PlanePoint option, (double From, double To) wide, (double From, double To) high)
    {
        // Limits may cross the whole picture: those of options that are spoken of lead, the others stand back, and names stand over them.
        var (tone, width) = option.IsPlain ? (Tone.Waiting, 1.1) : (Colour(option), 1.6);
        var (left, right) = (Math.Max(wide.From, option.EffectLower), Math.Min(wide.To, option.EffectUpper));
        var (low, top) = (Math.Max(high.From, option.CostLower), Math.Min(high.To, option.CostUpper));
        if (right > left)
        {
            marks.Add(new LineMark([(left, option.Cost), (right, option.Cost)], tone, width));
            if (!option.IsPlain) labels.Keep(left, option.Cost, right, option.Cost);
        }

        if (top > low)
        {
            marks.Add(new LineMark([(option.Effect, low), (option.Effect, top)], tone, width));
            if (!option.IsPlain) labels.Keep(option.Effect, low, option.Effect, top);
        }

        return left > option.EffectLower || right < option.EffectUpper || low > option.CostLower || top < option.CostUpper;
    }

    /// <summary>The shape says what the option is, with its word beside it.</summary>
    private static DotShape Shape(PlanePoint option) =>
        option.Standing.HasFlag(PlaneStanding.Best) ? DotShape.Square
        : option.Standing.HasFlag(PlaneStanding.Judged) ? DotShape.HollowDiamond
        : option.OnFrontier ? DotShape.Filled : DotShape.Hollow;

    private static Tone Colour(PlanePoint option) =>
        option.Standing.HasFlag(PlaneStanding.Best) ? Tone.Alert : option.Standing.HasFlag(PlaneStanding.Judged) ? Tone.Ink : Tone.Main;

    private static string Reading(ImmutableArray<PlanePoint> options, bool valued, bool cut, bool unnamed)
    {
        var text = " The line is the frontier: the steeper it gets, the more one more costs.";
        if (options.Any(option => !option.OnFrontier)) text += " Open: dominated, by another option or by a mix of two.";
        if (valued) text += " An option below the dashed line gains more than it costs.";
        if (options.Any(option => option.Standing.HasFlag(PlaneStanding.Best)))
            text += " Square: the best at the stated value" + (options.Any(option => option.Standing.HasFlag(PlaneStanding.Best | PlaneStanding.Judged)) ? ", which is the one judged too." : ".");
        if (options.Any(option => option.Standing.HasFlag(PlaneStanding.Judged) && !option.Standing.HasFlag(PlaneStanding.Best))) text += " Open diamond: the one judged.";
        text += " Bars: the limits of both" + (cut ? "; where one ends at the edge it goes on, to the limit in the table." : ".");
        if (unnamed) text += " Options without a name here stand in the table.";
        return text;
    }
}
