using System.Globalization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>A row of a table as a reader has it, from findings or from the file of an earlier release: texts by column name.</summary>
internal readonly struct Row(Func<string, string> read)
{
    /// <summary>The text in a column; empty where the cell is, or where there is no such column.</summary>
    public string this[string column] => read(column);

    /// <summary>A row of findings.</summary>
    public static Row Of(ITable table, IReadOnlyDictionary<string, int> columns, int row) => new(name =>
        columns.TryGetValue(name, out var column) ? Text(table.CellAt(row, column)) : "");

    /// <summary>A row of findings.</summary>
    public static Row Of(ITable table, int row) => Of(table, Names(table), row);

    /// <summary>The places of a table's columns.</summary>
    public static IReadOnlyDictionary<string, int> Names(ITable table) =>
        table.Columns.Select((column, index) => (column.Name, index)).ToDictionary(pair => pair.Name, pair => pair.index, StringComparer.Ordinal);

    private static string Text(Cell cell) => cell.Kind switch
    {
        CellKind.Text => cell.AsText,
        CellKind.Count => cell.AsCount.ToString(CultureInfo.InvariantCulture),
        CellKind.Date => cell.AsDate.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        CellKind.Number => cell.ToString(),
        CellKind.Hidden => "hidden",
        _ => "",
    };
}
