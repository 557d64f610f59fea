using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Cadence;

/// <summary>What each assumption does to a result, the one that does most on top. Each bar has the ends of the assumption's range written at its ends.</summary>
internal static class SwingChart
{
    /// <summary>More assumptions than this are not drawn; the table has all.</summary>
    public const int Most = 8;

    private const double Row = 50;
    private const double Beside = 20;
    private const string Centre = "all at their centre";

    /// <summary>Builds the chart.</summary>
    /// <param name="frame">Identity and words of the chart.</param>
    /// <param name="bars">The assumptions, the one that does most first; at least one that does something.</param>
    /// <param name="centre">The result with all assumptions at their centre.</param>
    /// <param name="result">What the result is, for the axis.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<SwingBar> bars, double centre, string result)
    {
        var shown = bars.Take(Most).ToImmutableArray();
        var (from, to) = Ends(shown, centre, Chart.Width - 14 - PictureArea.Right);
        var horizontal = new Axis(result, from, to, Ticks.Numbers(shown.Min(bar => bar.Least) >= 0 ? Math.Max(from, 0) : from, to));
        var vertical = new Axis("", -0.15, shown.Length + (PictureArea.Line / Row), [], Lines: false);
        var height = (int)(PictureArea.Top + 52 + (Row * (vertical.To - vertical.From)));
        var area = new PictureArea(horizontal, vertical, height);

        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(new LineMark([(centre, -0.15), (centre, shown.Length - 0.05)], Tone.Ink, 1.5));
        for (var index = 0; index < shown.Length; index++) Add(marks, shown[index], shown.Length - 1 - index, centre, area, index == 0);
        var right = area.Pixel(centre, 0).X + ChartText.Measure(Centre) + 12 < area.Left + area.Wide;
        marks.Add(new LabelMark(centre, shown.Length + 0.12, Centre, right ? LabelSide.Right : LabelSide.Left, Tone.Quiet));
        return new Chart(frame.Id, frame.Title, frame.Caption + Reading(bars), frame.Description, frame.TableId, horizontal, vertical, marks.ToImmutable(), height);
    }

    /// <summary>The ends of the axis between which every bar has room for its words on both sides.</summary>
    private static (double From, double To) Ends(ImmutableArray<SwingBar> bars, double centre, double room)
    {
        var (least, most) = (Math.Min(centre, bars.Min(bar => bar.Least)), Math.Max(centre, bars.Max(bar => bar.Most)));
        (double From, double To) At(double unit) => (
            bars.Min(bar => Math.Min(bar.Least, centre) - ((ChartText.Measure(LeftWords(bar, bar == bars[0])) + Beside) * unit)),
            bars.Max(bar => Math.Max(bar.Most, centre) + ((ChartText.Measure(RightWords(bar, bar == bars[0])) + Beside) * unit)));
        // The more a pixel is worth, the less room words leave to the bars: the smallest worth at which all fit.
        var (low, high) = ((most - least) / room, (most - least) / 60);
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            var (from, to) = At(middle);
            if (to - from <= room * middle) high = middle;
            else low = middle;
        }

        return At(high);
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, SwingBar bar, int row, double centre, PictureArea area, bool first)
    {
        var at = row + 0.3;
        marks.Add(new LabelMark(area.XAt(area.Left - 8), row + 0.77, bar.Name, LabelSide.Right, Tone.Ink, Backed: true));
        // Of two ends on the same side the farther one is drawn first, so that the nearer one is seen.
        foreach (var (end, tone) in new[] { (bar.AtLower, Tone.Waiting), (bar.AtUpper, Tone.Main) }.OrderByDescending(part => Math.Abs(part.Item1 - centre)))
        {
            if (end != centre) marks.Add(new BarMark(at, Math.Min(centre, end), Math.Max(centre, end), tone, 0.4));
        }

        marks.Add(new LabelMark(Math.Min(bar.Least, centre), at, LeftWords(bar, first), LabelSide.Left));
        marks.Add(new LabelMark(Math.Max(bar.Most, centre), at, RightWords(bar, first), LabelSide.Right));
    }

    // The first bar says which end is which; in the others the ends' values do.
    private static string LeftWords(SwingBar bar, bool first) => bar.AtLower <= bar.AtUpper ? LowerWords(bar, first) : UpperWords(bar, first);

    private static string RightWords(SwingBar bar, bool first) => bar.AtLower <= bar.AtUpper ? UpperWords(bar, first) : LowerWords(bar, first);

    private static string LowerWords(SwingBar bar, bool first) => (first ? "lower end: " : "") + bar.LowerWords;

    private static string UpperWords(SwingBar bar, bool first) => (first ? "upper end: " : "") + bar.UpperWords;

    private static Caption Reading(ImmutableArray<SwingBar> bars)
    {
        Caption text = " Each bar runs from the result at one end of the assumption's 95 % range to that at the other, written at its ends; the others stay at their centre.";
        return bars.Length <= Most ? text : text + new Sentence("{0} more, which do less, stand in the table.", Caption.Drawn(bars.Length - Most));
    }
}
