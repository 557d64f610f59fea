using System.Globalization;
using System.Text;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Html;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>
/// The look of the sheets: the ink of the report on the reader's own paper, headings in bold over one line, nothing filled; what is hidden is
/// in italics. Styles are numbered in the order in which they are asked for.
/// </summary>
internal sealed class SheetStyles
{
    private const int FirstFormat = 164;
    private const string Top = "<alignment vertical=\"top\"/>";
    // A text beside a number at the right of its cell keeps a distance from it.
    private const string Text = "<alignment horizontal=\"left\" vertical=\"top\" indent=\"1\"/>";
    private const string WrappedText = "<alignment horizontal=\"left\" vertical=\"top\" wrapText=\"1\" indent=\"1\"/>";
    private readonly List<string> formats = [];
    private readonly List<string> styles = [Style(0, 0, 0, "")];
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);

    /// <summary>The heading of a column.</summary>
    public int Heading(bool numbers) => Place(Style(0, 1, 1, numbers ? "<alignment horizontal=\"right\" vertical=\"bottom\" wrapText=\"1\"/>" : "<alignment horizontal=\"left\" vertical=\"bottom\" wrapText=\"1\" indent=\"1\"/>"));

    /// <summary>A number or a day; a text where there is no format.</summary>
    public int Figure(string format, bool wraps)
    {
        if (format.Length == 0) return Place(Style(0, 0, 0, wraps ? WrappedText : Text));
        if (!formats.Contains(format)) formats.Add(format);
        return Place(Style(FirstFormat + formats.IndexOf(format), 0, 0, Top));
    }

    /// <summary>A value that is not shown.</summary>
    public int Hidden => Place(Style(0, 2, 0, "<alignment horizontal=\"right\" vertical=\"top\"/>"));

    /// <summary>A name that leads to its sheet.</summary>
    public int Link => Place(Style(0, 3, 0, Text));

    /// <summary>The part of the workbook that holds them.</summary>
    public string Xml()
    {
        var xml = new StringBuilder("<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">");
        if (formats.Count > 0)
        {
            xml.Append(CultureInfo.InvariantCulture, $"<numFmts count=\"{formats.Count}\">");
            for (var index = 0; index < formats.Count; index++) xml.Append(CultureInfo.InvariantCulture, $"<numFmt numFmtId=\"{FirstFormat + index}\" formatCode=\"{Markup.Escape(formats[index])}\"/>");
            xml.Append("</numFmts>");
        }

        xml.Append("<fonts count=\"4\">").Append(Font("", Tone.Ink)).Append(Font("<b/>", Tone.Ink)).Append(Font("<i/>", Tone.Quiet)).Append(Font("<u/>", Tone.Main)).Append("</fonts>");
        xml.Append("<fills count=\"2\"><fill><patternFill patternType=\"none\"/></fill><fill><patternFill patternType=\"gray125\"/></fill></fills>");
        xml.Append("<borders count=\"2\"><border><left/><right/><top/><bottom/><diagonal/></border>");
        xml.Append("<border><left/><right/><top/><bottom style=\"thin\">").Append(Colour(Tone.Ink)).Append("</bottom><diagonal/></border></borders>");
        xml.Append("<cellStyleXfs count=\"1\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"/></cellStyleXfs>");
        xml.Append(CultureInfo.InvariantCulture, $"<cellXfs count=\"{styles.Count}\">").AppendJoin("", styles).Append("</cellXfs>");
        return xml.Append("<cellStyles count=\"1\"><cellStyle name=\"Normal\" xfId=\"0\" builtinId=\"0\"/></cellStyles></styleSheet>").ToString();
    }

    private int Place(string style)
    {
        if (places.TryGetValue(style, out var place)) return place;
        styles.Add(style);
        return places[style] = styles.Count - 1;
    }

    private static string Style(int format, int font, int border, string alignment) => string.Create(CultureInfo.InvariantCulture,
        $"<xf numFmtId=\"{format}\" fontId=\"{font}\" fillId=\"0\" borderId=\"{border}\" xfId=\"0\" applyNumberFormat=\"1\" applyFont=\"1\" applyBorder=\"1\" applyAlignment=\"1\">{alignment}</xf>");

    private static string Font(string manner, Tone tone) => $"<font>{manner}<sz val=\"10\"/>{Colour(tone)}<name val=\"Arial\"/><family val=\"2\"/></font>";

    private static string Colour(Tone tone) => $"<color rgb=\"FF{Palette.Of(tone)[1..].ToUpperInvariant()}\"/>";
}
