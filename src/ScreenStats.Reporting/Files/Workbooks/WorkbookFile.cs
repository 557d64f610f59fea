using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using ScreenStats.Reporting.Html;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>
/// Sheets as a file (ECMA-376, Office Open XML), written part by part: the same sheets give the same bytes, entries have one date, and there
/// is nothing in it but what is shown.
/// </summary>
internal static class WorkbookFile
{
    private const string Declaration = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";
    private const string Content = "application/vnd.openxmlformats-officedocument.spreadsheetml";
    private static readonly DateTimeOffset OneDate = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The bytes.</summary>
    public static byte[] Of(ImmutableArray<Sheet> sheets)
    {
        var (styles, texts) = (new SheetStyles(), new SharedTexts());
        var parts = sheets.Select(sheet => SheetXml.Of(sheet, styles, texts)).ToList();
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            Part(archive, "[Content_Types].xml", ContentTypes(sheets.Length));
            Part(archive, "_rels/.rels", $"<Relationships xmlns=\"{Package}/relationships\"><Relationship Id=\"rId1\" Type=\"{Relation}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            Part(archive, "xl/workbook.xml", Book(sheets));
            Part(archive, "xl/_rels/workbook.xml.rels", Relations(sheets.Length));
            Part(archive, "xl/styles.xml", styles.Xml());
            Part(archive, "xl/sharedStrings.xml", texts.Xml());
            for (var index = 0; index < parts.Count; index++) Part(archive, string.Create(CultureInfo.InvariantCulture, $"xl/worksheets/sheet{index + 1}.xml"), parts[index]);
        }

        return bytes.ToArray();
    }

    private static void Part(ZipArchive archive, string name, string xml)
    {
        var entry = archive.CreateEntry(name, CompressionLevel.Optimal);
        entry.LastWriteTime = OneDate;
        using var stream = entry.Open();
        stream.Write(new UTF8Encoding(false).GetBytes(Declaration + xml));
    }

    private static string ContentTypes(int sheets)
    {
        var xml = new StringBuilder($"<Types xmlns=\"{Package}/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/>");
        void Add(string part, string type) => xml.Append(CultureInfo.InvariantCulture, $"<Override PartName=\"/xl/{part}.xml\" ContentType=\"{Content}.{type}+xml\"/>");
        Add("workbook", "sheet.main");
        Add("styles", "styles");
        Add("sharedStrings", "sharedStrings");
        for (var sheet = 1; sheet <= sheets; sheet++) Add(string.Create(CultureInfo.InvariantCulture, $"worksheets/sheet{sheet}"), "worksheet");
        return xml.Append("</Types>").ToString();
    }

    private static string Book(ImmutableArray<Sheet> sheets)
    {
        var xml = new StringBuilder($"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relation}\"><bookViews><workbookView activeTab=\"0\" tabRatio=\"800\"/></bookViews><sheets>");
        for (var index = 0; index < sheets.Length; index++)
            xml.Append(CultureInfo.InvariantCulture, $"<sheet name=\"{Markup.Escape(sheets[index].Name)}\" sheetId=\"{index + 1}\" r:id=\"rId{index + 1}\"/>");
        // The headings are printed on every page.
        xml.Append("</sheets><definedNames>");
        for (var index = 0; index < sheets.Length; index++)
            xml.Append(CultureInfo.InvariantCulture, $"<definedName name=\"_xlnm.Print_Titles\" localSheetId=\"{index}\">{Markup.Escape($"'{sheets[index].Name}'!$1:$1")}</definedName>");
        return xml.Append("</definedNames></workbook>").ToString();
    }

    private static string Relations(int sheets)
    {
        var xml = new StringBuilder($"<Relationships xmlns=\"{Package}/relationships\">");
        void Add(int number, string type, string target) => xml.Append(CultureInfo.InvariantCulture, $"<Relationship Id=\"rId{number}\" Type=\"{Relation}/{type}\" Target=\"{target}.xml\"/>");
        for (var sheet = 1; sheet <= sheets; sheet++) Add(sheet, "worksheet", string.Create(CultureInfo.InvariantCulture, $"worksheets/sheet{sheet}"));
        Add(sheets + 1, "styles", "styles");
        Add(sheets + 2, "sharedStrings", "sharedStrings");
        return xml.Append("</Relationships>").ToString();
    }
}
