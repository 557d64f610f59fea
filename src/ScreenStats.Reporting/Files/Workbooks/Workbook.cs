using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>
/// Every table as a sheet of one workbook, before them a sheet of notes that leads to each, and after them one that says what stands in the
/// columns.
/// </summary>
internal static class Workbook
{
    /// <summary>Name of the first sheet.</summary>
    public const string Notes = "notes";

    /// <summary>Name of the last sheet.</summary>
    public const string Columns = "columns";

    private const int Narrowest = 8;
    private const int WidestHeading = 16;
    private const int Widest = 48;

    /// <summary>The bytes of the workbook, the same for the same tables.</summary>
    public static byte[] Of(ImmutableArray<ITable> tables)
    {
        var names = Names(tables);
        return WorkbookFile.Of(
        [
            WorkbookNotes.Sheet(tables, names),
            .. tables.Where(table => names.ContainsKey(table.Id)).Select(table => SheetOf(names[table.Id], table)),
            Descriptions(tables),
        ]);
    }

    /// <summary>The headings of a table's sheet: with units, each once.</summary>
    public static ImmutableArray<string> Headings(ITable table)
    {
        var headings = table.Columns.Select(NumberFormats.Heading).ToList();
        return [.. headings.Select((heading, index) => headings.Count(other => other == heading) == 1 ? heading : $"{heading} [{table.Columns[index].Name}]")];
    }

    /// <summary>The sheet of each table that has rows.</summary>
    private static ImmutableDictionary<string, string> Names(ImmutableArray<ITable> tables)
    {
        var ids = tables.Where(table => table.RowCount > 0).Select(table => table.Id).ToList();
        return ids.Zip(SheetNames.Of(ids, Notes, Columns)).ToImmutableDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal);
    }

    private static Sheet SheetOf(string name, ITable table)
    {
        var headings = Headings(table);
        return new(name, [.. table.Columns.Select((column, index) => ColumnOf(table, index, column.Unit, headings[index]))], table.RowCount, table.CellAt);
    }

    private static SheetColumn ColumnOf(ITable table, int column, Unit unit, string heading)
    {
        var cells = Enumerable.Range(0, table.RowCount).Select(row => table.CellAt(row, column)).ToList();
        var format = NumberFormats.Of(unit, cells.Where(cell => cell.Kind is CellKind.Number or CellKind.Count).Select(cell => cell.AsNumber));
        var longest = cells.Max(cell => cell.Kind switch
        {
            CellKind.Empty or CellKind.Undefined => 0,
            CellKind.Number or CellKind.Count => NumberFormats.Length(format, cell.AsNumber),
            _ => cell.ToString().Length,
        });
        var word = heading.Split(' ').Max(part => part.Length);
        return new SheetColumn(heading, format, Math.Clamp(Math.Max(Math.Max(longest, word), Math.Min(heading.Length, WidestHeading)), Narrowest, Widest));
    }

    private static Sheet Descriptions(ImmutableArray<ITable> tables)
    {
        var headings = tables.SelectMany(table => Headings(table)).ToList();
        var rows = ColumnDescriptions.Rows(tables).Select((row, index) => new[] { row.Table, row.Column, headings[index], row.Unit, row.Meaning, row.Method }).ToList();
        ImmutableArray<SheetColumn> columns = [new("Table", "", 24), new("Column in tables/", "", 30), new("Heading", "", 30, true), new("Unit", "", 22, true), new("Meaning", "", 70, true), new("Method", "", 30)];
        return new(Columns, columns, rows.Count, (row, column) => Cell.Text(rows[row][column]));
    }
}
