using ScreenStats.Reporting.Assets;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Tests.Charts;

/// <summary>Contrast of the colours of pictures, by the formula of WCAG 2.2 (relative luminance; success criteria 1.4.3 and 1.4.11).</summary>
public class PaletteTests
{
    // A tone that only words or paper have needs no place here; undecided parts carry words of ink.
    private static readonly Tone[] Marks = [Tone.Ink, Tone.Quiet, Tone.Main, Tone.Alert, Tone.Second, Tone.Open, Tone.Waiting, Tone.Unknown];
    private static readonly Tone[] Words = [Tone.Ink, Tone.Quiet, Tone.Main, Tone.Alert, Tone.Second];

    [Theory]
    [InlineData("#000000", "#ffffff", 21)] // WCAG 2.2, definition of contrast ratio: 1 to 21
    [InlineData("#767676", "#ffffff", 4.54)] // the lightest grey that passes AA on white; from memory
    public void The_formula_gives_what_is_known(string one, string other, double expected) => Contrast(one, other).Should().BeApproximately(expected, 0.005);

    [Fact]
    public void Every_mark_stands_out_from_the_paper_three_to_one_also_where_it_is_faded()
    {
        foreach (var tone in Marks)
        {
            Contrast(Palette.Of(tone), Palette.Paper).Should().BeGreaterThanOrEqualTo(3, tone.ToString());
            Contrast(Palette.Faded(tone), Palette.Paper).Should().BeGreaterThanOrEqualTo(3, "faded " + tone);
        }
    }

    [Fact]
    public void Words_stand_out_from_what_they_stand_on()
    {
        foreach (var tone in Words) Contrast(Palette.Of(tone), Palette.Paper).Should().BeGreaterThanOrEqualTo(4.5, tone.ToString());
        foreach (var tone in new[] { Tone.Main, Tone.Alert }) Contrast(Palette.Paper, Palette.Of(tone)).Should().BeGreaterThanOrEqualTo(4.5, "paper on " + tone);
        foreach (var tone in new[] { Tone.Open, Tone.Waiting, Tone.Unknown }) Contrast(Palette.Of(Tone.Ink), Palette.Of(tone)).Should().BeGreaterThanOrEqualTo(4.5, "ink on " + tone);
    }

    [Fact]
    public void Every_colour_of_a_picture_has_its_colour_in_the_dark()
    {
        var style = Asset.Text("report.css");
        var fills = Marks.Append(Tone.Paper).SelectMany(tone => new[] { Palette.Of(tone), Palette.Faded(tone) }).Distinct().ToArray();
        foreach (var colour in fills)
        {
            style.Should().Contain($"[fill='{colour.ToUpperInvariant()}'] {{ fill: #").And.Contain($"[stroke='{colour.ToUpperInvariant()}'] {{ stroke: #");
        }

        style.Should().Contain($"[stroke='{Palette.Grid.ToUpperInvariant()}'] {{ stroke: #");
    }

    private static double Contrast(string one, string other)
    {
        var (low, high) = (Math.Min(Luminance(one), Luminance(other)), Math.Max(Luminance(one), Luminance(other)));
        return (high + 0.05) / (low + 0.05);
    }

    private static double Luminance(string colour) => (0.2126 * Part(colour[1..3])) + (0.7152 * Part(colour[3..5])) + (0.0722 * Part(colour[5..7]));

    private static double Part(string hex)
    {
        var value = Convert.ToInt32(hex, 16) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
