using System.Globalization;
using System.Text;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using SkiaSharp;

namespace ScreenStats.Reporting.Charts.Words;

/// <summary>Names from the data as they may stand in a picture: one line, no control or direction characters, not longer than there is room.</summary>
internal static class ChartText
{
    /// <summary>A name, shortened with an ellipsis.</summary>
    public static string Name(string name, int most = 22)
    {
        var text = new StringBuilder(Math.Min(name.Length, most + 1));
        foreach (var rune in name.EnumerateRunes())
        {
            if (text.Length >= most) return text.ToString().TrimEnd() + "…";
            text.Append(Rune.IsControl(rune) || rune == Rune.ReplacementChar || (rune.Value & 0xFFFE) == 0xFFFE || Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format ? " " : rune.ToString());
        }

        return text.ToString();
    }

    /// <summary>About how wide a text is in a picture, in pixels.</summary>
    public static double Width(string text) => text.Length * 7.4;

    /// <summary>How wide a text is drawn in a picture, in pixels, by the shipped font.</summary>
    /// <param name="text">The text.</param>
    /// <param name="strong">Whether it is drawn strong.</param>
    public static double Measure(string text, bool strong = false)
    {
        using var font = new SKFont(ReportFont.Typeface(strong), Chart.TextSize);
        return font.MeasureText(text);
    }
}
