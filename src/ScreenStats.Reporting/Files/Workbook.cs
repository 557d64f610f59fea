using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using MiniExcelLibs;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files;

/// <summary>Every table as a sheet of one workbook, and a sheet that says what stands in the columns.</summary>
internal static partial class Workbook
{
    private const int LongestSheetName = 31;

    /// <summary>The bytes of the workbook, the same for the same tables.</summary>
    public static byte[] Of(ImmutableArray<ITable> tables)
    {
        var sheets = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var table in tables.Where(table => table.RowCount > 0)) sheets.Add(SheetName(table.Id), Rows(table));
        sheets.Add("columns", ColumnDescriptions.Rows(tables).Select(row => new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            ["table"] = row.Table, ["column"] = row.Column, ["unit"] = row.Unit, ["meaning"] = row.Meaning, ["method"] = row.Method,
        }).ToArray());
        using var written = new MemoryStream();
        written.SaveAs(sheets);
        return WithOneDate(written.ToArray());
    }

    private static string SheetName(string id) => id.Length <= LongestSheetName ? id : id[..LongestSheetName];

    private static IEnumerable<Dictionary<string, object?>> Rows(ITable table)
    {
        for (var row = 0; row < table.RowCount; row++)
        {
            var cells = new Dictionary<string, object?>(table.Columns.Length, StringComparer.Ordinal);
            for (var column = 0; column < table.Columns.Length; column++) cells[table.Columns[column].Name] = Value(table.CellAt(row, column));
            yield return cells;
        }
    }

    private static object? Value(Cell cell) => cell.Kind switch
    {
        CellKind.Count => cell.AsCount,
        CellKind.Number => cell.AsNumber,
        CellKind.Text => CsvText.Guarded(cell.AsText),
        CellKind.Date => cell.ToString(),
        CellKind.Hidden => "hidden",
        _ => null,
    };

    /// <summary>The same archive with entries in one order and of one date, and sheets referred to by their number instead of by chance.</summary>
    private static byte[] WithOneDate(byte[] archive)
    {
        using var read = new ZipArchive(new MemoryStream(archive), ZipArchiveMode.Read);
        using var rewritten = new MemoryStream();
        using (var write = new ZipArchive(rewritten, ZipArchiveMode.Create, leaveOpen: true))
        {
            var names = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var entry in read.Entries.OrderBy(entry => entry.FullName != "[Content_Types].xml").ThenBy(entry => entry.FullName, StringComparer.Ordinal))
            {
                var copy = write.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
                using var from = entry.Open();
                using var to = copy.Open();
                if (entry.FullName is "xl/workbook.xml" or "xl/_rels/workbook.xml.rels") to.Write(Renamed(from, names));
                else from.CopyTo(to);
            }
        }

        return rewritten.ToArray();
    }

    // The library names each relationship by a random number. The first part that is rewritten gives the order.
    private static byte[] Renamed(Stream part, Dictionary<string, string> names)
    {
        using var reader = new StreamReader(part);
        return Encoding.UTF8.GetBytes(RandomName().Replace(reader.ReadToEnd(), match =>
        {
            if (!names.TryGetValue(match.Value, out var name))
                names.Add(match.Value, name = string.Create(CultureInfo.InvariantCulture, $"\"rId{names.Count + 1}\""));
            return name;
        }));
    }

    [GeneratedRegex("\"R[0-9a-f]{32}\"")]
    private static partial Regex RandomName();
}
