using Microsoft.Data.Analysis;
using ScreenStats.Evaluation.Model;

namespace ScreenStats;

/// <summary>Tables of findings as data frames, for notebooks.</summary>
public static class DataFrames
{
    /// <summary>The table as a data frame: same columns, same order, full precision.</summary>
    /// <param name="table">A table of findings.</param>
    /// <returns>
    /// A frame whose columns are texts, 64-bit whole numbers, double-precision numbers or dates by the column's unit. An empty, undefined
    /// or hidden cell is null: the reason stands in the table itself and in findings.json.
    /// </returns>
    public static DataFrame ToDataFrame(this ITable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new DataFrame(table.Columns.Select((column, index) => ColumnOf(table, column, index)));
    }

    private static DataFrameColumn ColumnOf(ITable table, ColumnInfo column, int index)
    {
        var cells = Enumerable.Range(0, table.RowCount).Select(row => table.CellAt(row, index)).ToArray();
        return column.Unit switch
        {
            Unit.Text => new StringDataFrameColumn(column.Name, cells.Select(TextOf)),
            Unit.Date => new DateTimeDataFrameColumn(column.Name, cells.Select(cell =>
                cell.Kind == CellKind.Date ? cell.AsDate.ToDateTime(TimeOnly.MinValue) : (DateTime?)null)),
            Unit.Count when cells.All(cell => cell.Kind != CellKind.Number) => new Int64DataFrameColumn(column.Name, cells.Select(cell =>
                cell.Kind == CellKind.Count ? cell.AsCount : (long?)null)),
            _ => new DoubleDataFrameColumn(column.Name, cells.Select(cell =>
                cell.Kind is CellKind.Number or CellKind.Count ? cell.AsNumber : (double?)null)),
        };
    }

    private static string? TextOf(Cell cell) => cell.Kind switch
    {
        CellKind.Text => cell.AsText,
        CellKind.Empty or CellKind.Undefined or CellKind.Hidden => null,
        _ => cell.ToString(),
    };
}
