using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using ScreenStats.Reporting.Charts.Model;
using SkiaSharp;

namespace ScreenStats.Reporting.Charts.Drawing;

/// <summary>
/// Makes the drawing library's SVG a picture for a page: scalable, named and described, with ids of its own figure instead of a
/// process-wide counter's, and text that keeps its width in whatever font the browser has.
/// </summary>
internal static class SvgFinish
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Finishes a drawing.</summary>
    /// <param name="svg">As the drawing library wrote it.</param>
    /// <param name="chart">What it is a picture of.</param>
    /// <returns>One <c>svg</c> element, the same bytes for the same chart.</returns>
    public static string Finish(string svg, Chart chart)
    {
        var root = XElement.Parse(svg.TrimStart('\uFEFF'));
        var clean = new XElement(
            Svg + "svg",
            new XAttribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {Chart.Width} {chart.Height}")),
            new XAttribute("width", Chart.Width),
            new XAttribute("height", chart.Height),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{chart.Id}-title {chart.Id}-desc"),
            new XElement(Svg + "title", new XAttribute("id", chart.Id + "-title"), chart.Title),
            new XElement(Svg + "desc", new XAttribute("id", chart.Id + "-desc"), chart.Description));
        AddContent(root, clean, chart);
        return Write(clean);
    }

    private static void AddContent(XElement root, XElement clean, Chart chart)
    {
        var figure = chart.Id;
        var labels = new DrawnLabels(chart);
        var attribute = chart.Levels switch { ChartLevels.Site => "data-site", ChartLevels.Lot => "data-lot", _ => null };
        var ids = new Dictionary<string, string>(StringComparer.Ordinal);
        var shapes = new Dictionary<string, string>(StringComparer.Ordinal);
        XElement? last = null;
        foreach (var element in root.Elements().ToArray())
        {
            if (element.Name.LocalName == "clipPath")
            {
                var shape = string.Concat(element.Elements().Select(child => child.ToString(SaveOptions.DisableFormatting)));
                if (!shapes.TryGetValue(shape, out var id))
                {
                    id = string.Create(CultureInfo.InvariantCulture, $"{figure}-clip-{shapes.Count + 1}");
                    shapes.Add(shape, id);
                    clean.Add(new XElement(Svg + "clipPath", new XAttribute("id", id), element.Elements()));
                }

                ids[element.Attribute("id")!.Value] = id;
                continue;
            }

            foreach (var clipped in element.DescendantsAndSelf().Where(part => part.Attribute("clip-path") is not null))
            {
                var old = clipped.Attribute("clip-path")!.Value;
                clipped.SetAttributeValue("clip-path", $"url(#{ids[old[5..^1]]})");
            }

            foreach (var text in element.DescendantsAndSelf(Svg + "text").ToArray()) FinishText(text, labels, attribute);
            // Neighbours within the same clip become one group.
            if (element.Name == Svg + "g" && last is not null && last.Name == element.Name
                && SameAttributes(element, last))
            {
                last.Add(element.Nodes());
                continue;
            }

            var copy = new XElement(element);
            clean.Add(copy);
            last = copy;
        }
    }

    private static bool SameAttributes(XElement one, XElement other) =>
        one.Attributes().Select(part => (part.Name, part.Value)).SequenceEqual(other.Attributes().Select(part => (part.Name, part.Value)));

    /// <summary>One place for the whole text and its measured width, instead of a place for every letter in a font that is not there.</summary>
    private static void FinishText(XElement text, DrawnLabels labels, string? attribute)
    {
        var drawn = text.Value.Trim();
        var bold = text.Attribute("font-family")?.Value.Contains("SemiBold", StringComparison.Ordinal) ?? false;
        var size = float.Parse(text.Attribute("font-size")!.Value, CultureInfo.InvariantCulture);
        using var font = new SKFont(ReportFont.Typeface(bold), size);
        var (words, level) = labels.Of(drawn);
        text.Value = words;
        if (attribute is not null && level is not null) text.SetAttributeValue(attribute, Name(level));
        text.SetAttributeValue("x", First(text.Attribute("x")?.Value));
        text.SetAttributeValue("y", First(text.Attribute("y")?.Value));
        text.SetAttributeValue("font-family", ReportFont.WebStack);
        text.SetAttributeValue("font-weight", bold ? "600" : null);
        if (words.Length < 2) return;
        text.SetAttributeValue("textLength", Math.Round(font.MeasureText(words), 2));
        text.SetAttributeValue("lengthAdjust", "spacingAndGlyphs");
    }

    // The whole name, by which the script of the page finds it; as in the words, characters that steer a page become spaces.
    private static string Name(string level) => Words.ChartText.Name(level, level.Length + 1);

    private static string First(string? list) => (list ?? "0").Split(',', 2)[0].Trim();

    private static string Write(XElement element)
    {
        var text = new StringBuilder();
        using (var writer = XmlWriter.Create(text, new XmlWriterSettings { OmitXmlDeclaration = true, Indent = false, NewLineHandling = NewLineHandling.Replace, NewLineChars = "\n" }))
        {
            Trimmed(element).WriteTo(writer);
        }

        return text.Append('\n').ToString();
    }

    private static XElement Trimmed(XElement element)
    {
        foreach (var blank in element.DescendantNodes().OfType<XText>().Where(node => string.IsNullOrWhiteSpace(node.Value) && node.Parent!.Name != Svg + "text").ToArray()) blank.Remove();
        return element;
    }
}
