using ScreenStats.Reporting.Charts.Model;
using SkiaSharp;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>
/// The words of a chart by the glyphs that were drawn for them. The drawing library writes back what its glyphs stand for, which is not
/// always the letter that was asked for (the Greek letter mu comes back as the micro sign, letters that the font lacks as nothing).
/// </summary>
internal sealed class DrawnLabels
{
    private readonly Dictionary<string, Queue<string>> byGlyphs = new(StringComparer.Ordinal);

    /// <summary>Collects the words of a chart in the order in which they are drawn.</summary>
    public DrawnLabels(Chart chart)
    {
        var words = chart.Marks.OfType<LabelMark>().Select(label => label.Text)
            .Concat(chart.Horizontal.Ticks.Select(tick => tick.Label)).Concat(chart.Vertical.Ticks.Select(tick => tick.Label))
            .Concat([chart.Horizontal.Label, chart.Vertical.Label]);
        foreach (var text in words)
        {
            var key = Key(text);
            if (!byGlyphs.TryGetValue(key, out var queue)) byGlyphs.Add(key, queue = new Queue<string>());
            queue.Enqueue(text.Trim());
        }
    }

    /// <summary>The words that were asked for where these were drawn.</summary>
    public string Of(string drawn) => byGlyphs.TryGetValue(Key(drawn), out var queue) && queue.TryDequeue(out var asked) ? asked : drawn;

    private static string Key(string text)
    {
        using var font = new SKFont(ReportFont.Typeface(bold: false));
        return string.Join(',', font.GetGlyphs(text.Trim()).Where(glyph => glyph != 0));
    }
}
