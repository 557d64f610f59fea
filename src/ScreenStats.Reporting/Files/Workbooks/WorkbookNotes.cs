using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>
/// The first sheet: how to read the others, and of each table what it shows, by which methods and after whom its figures were made, and why
/// cells of it are empty where a figure is not defined.
/// </summary>
internal static class WorkbookNotes
{
    private const int MostRanges = 12;
    private static readonly ImmutableArray<SheetColumn> Columns =
        [new("Table", "", 26), new("About", "", 16), new("Column or method", "", 30, true), new("Note", "", 90, true), new("Cells", "", 30, true)];

    private static readonly ImmutableArray<string> Reading =
    [
        "One sheet for each table that has rows. Cells hold full precision; their formats show about three digits, at most four decimals. Shares are stored as fractions and shown as per cent.",
        "An empty cell has no value: nothing applies there, as for the level of a whole program, or the figure is not defined; then this sheet says why.",
        "A cell reads hidden where its value is not shown to protect people.",
        "A text that a spreadsheet would take for a formula is preceded by an apostrophe. There is no formula in this workbook.",
    ];

    /// <summary>The sheet.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="names">The sheet of each table that has rows.</param>
    public static Sheet Sheet(ImmutableArray<ITable> tables, IReadOnlyDictionary<string, string> names)
    {
        var rows = new List<(string? Link, string[] Texts)>();
        foreach (var text in Reading) rows.Add((null, ["", "reading", "", text, ""]));
        foreach (var table in tables)
        {
            var link = names.GetValueOrDefault(table.Id);
            void Add(string about, string name, string note, string cells = "") => rows.Add((link, [table.Id, about, name, note, cells]));
            Add("shows", "", $"{table.Title}. {table.Meaning}");
            if (link is null) Add("rows", "", "It has no rows here, so it has no sheet.");
            foreach (var method in TableMethods.Of(table))
            {
                if (MethodCatalogue.Find(method) is not { } note) continue;
                Add("method", method, $"{note.Title}. {note.Meaning}");
                Add("source", method, note.Source);
            }

            var headings = Workbook.Headings(table);
            for (var column = 0; column < table.Columns.Length; column++)
            {
                foreach (var (reason, places) in Undefined(table, column)) Add("not defined", headings[column], Sentence(reason), Cells(places, column));
            }
        }

        return new(Workbook.Notes, Columns, rows.Count, (row, column) => Cell.Text(rows[row].Texts[column])) { LinkAt = row => rows[row].Link };
    }

    private static IEnumerable<(string Reason, List<int> Rows)> Undefined(ITable table, int column) =>
        Enumerable.Range(0, table.RowCount).Where(row => table.CellAt(row, column).Kind == CellKind.Undefined)
            .GroupBy(row => table.CellAt(row, column).AsText, StringComparer.Ordinal).Select(group => (group.Key, group.ToList()));

    private static string Sentence(string reason) => reason.Length == 0 ? "" : char.ToUpperInvariant(reason[0]) + reason[1..] + (reason[^1] == '.' ? "" : ".");

    /// <summary>The cells of some rows: B3, B5:B9.</summary>
    private static string Cells(List<int> rows, int column)
    {
        var ranges = new List<(int First, int Last)>();
        foreach (var row in rows)
        {
            if (ranges.Count > 0 && ranges[^1].Last == row - 1) ranges[^1] = (ranges[^1].First, row);
            else ranges.Add((row, row));
        }

        var named = ranges.Take(MostRanges).Select(range => range.First == range.Last ? SheetXml.Name(range.First + 1, column) : $"{SheetXml.Name(range.First + 1, column)}:{SheetXml.Name(range.Last + 1, column)}");
        var rest = ranges.Skip(MostRanges).Sum(range => range.Last - range.First + 1);
        return string.Join(", ", named) + (rest > 0 ? string.Create(CultureInfo.InvariantCulture, $" and {rest} more") : "");
    }
}
