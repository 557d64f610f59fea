using ScreenStats.Reporting.Charts.Model;
using SkiaSharp;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>
/// The words of a chart by the glyphs that were drawn for them. The drawing library writes back what its glyphs stand for, which is not
/// always the letter that was asked for (the Greek letter mu comes back as the micro sign, letters that the font lacks as nothing).
/// </summary>
internal sealed class DrawnLabels
{
    private readonly Dictionary<string, Queue<(string Words, string? Level)>> byGlyphs = new(StringComparer.Ordinal);

    /// <summary>Collects the words of a chart in the order in which they are drawn.</summary>
    public DrawnLabels(Chart chart)
    {
        var words = chart.Marks.OfType<LabelMark>().Select(label => (label.Text, label.Level))
            .Concat(Of(chart.Horizontal)).Concat(Of(chart.Vertical)).Concat([(chart.Horizontal.Label, null), (chart.Vertical.Label, null)]);
        foreach (var (text, level) in words)
        {
            var key = Key(text);
            if (!byGlyphs.TryGetValue(key, out var queue)) byGlyphs.Add(key, queue = new Queue<(string Words, string? Level)>());
            queue.Enqueue((text.Trim(), level));
        }
    }

    /// <summary>The words that were asked for where these were drawn, and the level that they name.</summary>
    public (string Words, string? Level) Of(string drawn) => byGlyphs.TryGetValue(Key(drawn), out var queue) && queue.TryDequeue(out var asked) ? asked : (drawn, null);

    private static IEnumerable<(string Text, string? Level)> Of(Axis axis) => axis.Ticks.Select(tick => (tick.Label, tick.Level));

    private static string Key(string text)
    {
        using var font = new SKFont(ReportFont.Typeface(bold: false));
        return string.Join(',', font.GetGlyphs(text.Trim()).Where(glyph => glyph != 0));
    }
}
