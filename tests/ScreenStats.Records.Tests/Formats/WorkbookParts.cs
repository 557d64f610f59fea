using System.IO.Compression;
using System.Text;

namespace ScreenStats.Records.Tests.Formats;

/// <summary>A workbook made of bare parts (ECMA-376), so that tests can put anything into any of them.</summary>
internal static class WorkbookParts
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006/relationships";

    /// <summary>A workbook of one sheet, whose rows are given as XML.</summary>
    public static byte[] Of(string sheetData, string? sharedTexts = null, string before = "", string after = "") =>
        Zip([.. Frame(sharedTexts is not null), ("xl/worksheets/sheet1.xml", Sheet(sheetData, before, after)), .. sharedTexts is null ? [] : new[] { ("xl/sharedStrings.xml", SharedTexts(sharedTexts)) }]);

    public static string Sheet(string rows, string before = "", string after = "") =>
        $"<worksheet xmlns=\"{Main}\">{before}<sheetData>{rows}</sheetData>{after}</worksheet>";

    public static string SharedTexts(string items) => $"<sst xmlns=\"{Main}\">{items}</sst>";

    public static string Row(int number, params string[] cells) =>
        $"<row r=\"{number}\">{string.Concat(cells.Select((text, at) => $"<c r=\"{(char)('A' + at)}{number}\" t=\"inlineStr\"><is><t>{System.Security.SecurityElement.Escape(text)}</t></is></c>"))}</row>";

    public static IEnumerable<(string Name, string Text)> Frame(bool sharedTexts) =>
    [
        ("[Content_Types].xml", "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"xml\" ContentType=\"application/xml\"/></Types>"),
        ("_rels/.rels", $"<Relationships xmlns=\"{Package}\"><Relationship Id=\"r1\" Type=\"{Relation}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"),
        ("xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relation}\"><sheets><sheet name=\"Log\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>"),
        ("xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"{Package}\"><Relationship Id=\"r1\" Type=\"{Relation}/worksheet\" Target=\"worksheets/sheet1.xml\"/>"
            + (sharedTexts ? $"<Relationship Id=\"r2\" Type=\"{Relation}/sharedStrings\" Target=\"sharedStrings.xml\"/>" : "") + "</Relationships>"),
    ];

    public static byte[] Zip(IEnumerable<(string Name, string Text)> parts) => Zip(parts.Select(part => (part.Name, Encoding.UTF8.GetBytes(part.Text))));

    public static byte[] Zip(IEnumerable<(string Name, byte[] Bytes)> parts)
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in parts)
            {
                using var part = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
                part.Write(bytes);
            }
        }

        return stream.ToArray();
    }
}
