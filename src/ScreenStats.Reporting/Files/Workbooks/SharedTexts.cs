using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ScreenStats.Reporting.Html;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>The texts of a workbook, each once, in the order in which they come.</summary>
internal sealed partial class SharedTexts
{
    /// <summary>The longest text that a cell may hold.</summary>
    private const int Longest = 32_767;

    private readonly List<string> texts = [];
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private long uses;

    /// <summary>The place of a text.</summary>
    public int Place(string text)
    {
        uses++;
        if (places.TryGetValue(text, out var place)) return place;
        texts.Add(text);
        return places[text] = texts.Count - 1;
    }

    /// <summary>The part of the workbook that holds them.</summary>
    public string Xml()
    {
        var xml = new StringBuilder();
        xml.Append(CultureInfo.InvariantCulture, $"<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" count=\"{uses}\" uniqueCount=\"{texts.Count}\">");
        foreach (var text in texts) xml.Append("<si><t xml:space=\"preserve\">").Append(Written(text)).Append("</t></si>");
        return xml.Append("</sst>").ToString();
    }

    // What looks like the standard's way to write a character by its number (_x0041_) is marked as meant literally.
    private static string Written(string text) =>
        Markup.Escape(Coded().Replace(text.Length <= Longest ? text : text[..(Longest - 1)] + "…", "_x005F_$1"));

    [GeneratedRegex("_(x[0-9A-Fa-f]{4}_)")]
    private static partial Regex Coded();
}
