using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>What each way of screening gives against what it asks, along a line through all of them: where it flattens, more screens add little.</summary>
internal static class GainChart
{
    /// <summary>More options than this are not named one by one; the table names them.</summary>
    public const int MostNames = 14;

    private const double Plot = 340;

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="options">At least two, of different burden.</param>
    /// <param name="burden">What the burden is: "screens per person in 30 days".</param>
    /// <param name="gain">What the gain is, for the axis.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<OptionPoint> options, string burden, string gain)
    {
        var ordered = options.Where(option => option.Standing != OptionStanding.Done).OrderBy(option => option.Burden).ThenBy(option => option.Name, StringComparer.Ordinal).ToImmutableArray();
        var most = options.Max(option => option.Burden);
        var top = Math.Clamp(1.03 * options.Max(option => Math.Max(option.Gain, option.Upper)), 1e-4, 1);
        var horizontal = new Axis(burden, -0.025 * most, 1.04 * most, Ticks.Numbers(0, most), Lines: false);
        var vertical = new Axis(gain, -0.035 * top, 1.04 * top, Ticks.PerCent(top));
        var height = (int)(Plot + PictureArea.Top + 52);
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new BandMark([.. ordered.Select(option => (option.Burden, option.Lower, option.Upper))], Tone.Main, 0.14));
        marks.Add(new LineMark([.. ordered.Select(option => (option.Burden, option.Gain))], Tone.Main, 2.2));
        foreach (var option in options.OrderBy(option => option.Standing))
        {
            var tone = Colour(option);
            if (option.Upper > option.Lower) marks.Add(new LineMark([(option.Burden, option.Lower), (option.Burden, option.Upper)], tone, option.Standing == OptionStanding.None ? 1.3 : 2));
            marks.Add(new DotMark(option.Burden, option.Gain, tone, Shape(option), option.Standing == OptionStanding.None ? 8 : 14));
        }

        new OptionLabels(area, ordered).Write(marks, options, MostNames);
        var unnamed = options.Any(option => option.Burden > 0 && !marks.OfType<LabelMark>().Any(label => label.Text == option.Words(ChartText.Name(option.Name))));
        return new Chart(
            frame.Id, frame.Title, frame.Caption + Reading(options, unnamed), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>The shape says what the option is, with its word beside it.</summary>
    private static DotShape Shape(OptionPoint option) =>
        option.Standing.HasFlag(OptionStanding.Chosen) ? DotShape.Square
        : option.Standing.HasFlag(OptionStanding.Planned) ? DotShape.HollowDiamond
        : option.Standing.HasFlag(OptionStanding.Done) ? DotShape.Hollow : DotShape.Filled;

    private static Tone Colour(OptionPoint option) =>
        option.Standing.HasFlag(OptionStanding.Chosen) ? Tone.Alert : option.Standing == OptionStanding.None ? Tone.Main : Tone.Ink;

    private static string Reading(ImmutableArray<OptionPoint> options, bool unnamed)
    {
        var text = " The steeper the line, the more one more screen adds. Upright: the limits of each option; shaded: the same along the line, which only joins the options.";
        if (options.Any(option => option.Standing.HasFlag(OptionStanding.Chosen))) text += " Square: the option that the stated rule chooses" + (options.Any(option => option.Standing == (OptionStanding.Chosen | OptionStanding.Planned)) ? ", which is the planned one too." : ".");
        if (options.Any(option => option.Standing == OptionStanding.Planned)) text += " Open diamond: what the program set out to do.";
        if (options.Any(option => option.Standing == OptionStanding.Done)) text += " Ring: what was done.";
        if (unnamed) text += " Options without a name here stand in the table.";
        return text;
    }
}
