using System.Globalization;
using System.Text;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Html;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>One sheet as a part of a workbook (ECMA-376, SpreadsheetML).</summary>
internal static class SheetXml
{
    private const int LineHeight = 13;
    private const int DayZero = 693_593; // 30 December 1899, from which spreadsheets count days

    /// <summary>The part.</summary>
    public static string Of(Sheet sheet, SheetStyles styles, SharedTexts texts)
    {
        var xml = new StringBuilder("<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">");
        var area = $"A1:{Name(sheet.RowCount, sheet.Columns.Length - 1)}";
        xml.Append("<sheetPr><pageSetUpPr fitToPage=\"1\"/></sheetPr><dimension ref=\"").Append(area).Append("\"/>");
        xml.Append("<sheetViews><sheetView workbookViewId=\"0\"><pane ySplit=\"1\" topLeftCell=\"A2\" activePane=\"bottomLeft\" state=\"frozen\"/><selection pane=\"bottomLeft\" activeCell=\"A2\" sqref=\"A2\"/></sheetView></sheetViews>");
        xml.Append("<sheetFormatPr defaultRowHeight=\"13\" customHeight=\"1\"/><cols>");
        for (var column = 0; column < sheet.Columns.Length; column++)
            xml.Append(CultureInfo.InvariantCulture, $"<col min=\"{column + 1}\" max=\"{column + 1}\" width=\"{sheet.Columns[column].Width + 2}\" customWidth=\"1\"/>");
        xml.Append("</cols><sheetData>");
        Headings(xml, sheet, styles, texts);
        for (var row = 0; row < sheet.RowCount; row++) Row(xml, sheet, row, styles, texts);
        xml.Append("</sheetData><autoFilter ref=\"").Append(area).Append("\"/>");
        Links(xml, sheet);
        xml.Append("<pageMargins left=\"0.5\" right=\"0.5\" top=\"0.6\" bottom=\"0.6\" header=\"0.3\" footer=\"0.3\"/>");
        xml.Append("<pageSetup orientation=\"landscape\" fitToWidth=\"1\" fitToHeight=\"0\"/><headerFooter><oddFooter>&amp;L&amp;A&amp;R&amp;P / &amp;N</oddFooter></headerFooter>");
        return xml.Append("</worksheet>").ToString();
    }

    /// <summary>The name of a cell: A1 for the first heading.</summary>
    public static string Name(int row, int column)
    {
        var letters = "";
        for (var rest = column + 1; rest > 0; rest = (rest - 1) / 26) letters = (char)('A' + (rest - 1) % 26) + letters;
        return letters + (row + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static void Headings(StringBuilder xml, Sheet sheet, SheetStyles styles, SharedTexts texts)
    {
        var lines = Lines(sheet.Columns.Select(column => (column.Heading, column.Width)));
        xml.Append(CultureInfo.InvariantCulture, $"<row r=\"1\" ht=\"{lines * LineHeight + 3}\" customHeight=\"1\">");
        for (var column = 0; column < sheet.Columns.Length; column++)
            Text(xml, Name(0, column), styles.Heading(sheet.Columns[column].Format.Length > 0), texts.Place(sheet.Columns[column].Heading));
        xml.Append("</row>");
    }

    /// <summary>Over how many lines texts go that break between words, each within its width; at least one. Not every program measures it by itself.</summary>
    private static int Lines(IEnumerable<(string Text, int Width)> texts) => texts.Max(text =>
    {
        var (lines, used) = (1, 0);
        foreach (var word in text.Text.Split(' '))
        {
            if (used > 0 && used + 1 + word.Length > text.Width) (lines, used) = (lines + 1, 0);
            used += (used > 0 ? 1 : 0) + word.Length;
            lines += (used - 1) / text.Width;
            if (used > text.Width) used %= text.Width;
        }

        return lines;
    });

    private static void Row(StringBuilder xml, Sheet sheet, int row, SheetStyles styles, SharedTexts texts)
    {
        var lines = Lines(sheet.Columns.Select((column, index) => column.Wraps && sheet.CellAt(row, index) is { Kind: CellKind.Text } cell ? (cell.AsText, column.Width) : ("", 1)));
        xml.Append(CultureInfo.InvariantCulture, $"<row r=\"{row + 2}\"{(lines > 1 ? $" ht=\"{lines * LineHeight}\" customHeight=\"1\"" : "")}>");
        for (var column = 0; column < sheet.Columns.Length; column++)
        {
            var cell = sheet.CellAt(row, column);
            var (format, wraps) = (sheet.Columns[column].Format, sheet.Columns[column].Wraps);
            var name = Name(row + 1, column);
            switch (cell.Kind)
            {
                case CellKind.Count or CellKind.Number: Number(xml, name, styles.Figure(format.Length > 0 ? format : "General", wraps), cell.ToString()); break;
                case CellKind.Date: Number(xml, name, styles.Figure("yyyy-mm-dd", wraps), (cell.AsDate.DayNumber - DayZero).ToString(CultureInfo.InvariantCulture)); break;
                case CellKind.Text when cell.AsText.Length == 0: break;
                case CellKind.Text: Text(xml, name, column == 0 && sheet.LinkAt?.Invoke(row) is not null ? styles.Link : styles.Figure("", wraps), texts.Place(CsvText.Guarded(cell.AsText))); break;
                case CellKind.Hidden: Text(xml, name, styles.Hidden, texts.Place("hidden")); break;
                default: break;
            }
        }

        xml.Append("</row>");
    }

    private static void Links(StringBuilder xml, Sheet sheet)
    {
        if (sheet.LinkAt is null) return;
        var links = new StringBuilder();
        for (var row = 0; row < sheet.RowCount; row++)
        {
            if (sheet.LinkAt(row) is { } target) links.Append(CultureInfo.InvariantCulture, $"<hyperlink ref=\"{Name(row + 1, 0)}\" location=\"{Markup.Escape($"'{target}'!A1")}\" display=\"{Markup.Escape(target)}\"/>");
        }

        if (links.Length > 0) xml.Append("<hyperlinks>").Append(links).Append("</hyperlinks>");
    }

    private static void Number(StringBuilder xml, string name, int style, string value) => xml.Append(CultureInfo.InvariantCulture, $"<c r=\"{name}\" s=\"{style}\"><v>{value}</v></c>");

    private static void Text(StringBuilder xml, string name, int style, int place) => xml.Append(CultureInfo.InvariantCulture, $"<c r=\"{name}\" s=\"{style}\" t=\"s\"><v>{place}</v></c>");
}
