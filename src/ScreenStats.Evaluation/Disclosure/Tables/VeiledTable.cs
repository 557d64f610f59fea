using System.Collections.Immutable;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>A table without the rows that are too fine, and with hidden cells.</summary>
internal sealed class VeiledTable : ITable
{
    private readonly ITable table;
    private readonly ImmutableArray<int> rows;
    private readonly bool[,] hidden;
    private readonly Dictionary<(int Row, int Column), double> coarse = [];

    public VeiledTable(ITable table, HiddenCells cells)
    {
        this.table = table;
        var names = Row.Names(table);
        rows = [.. Enumerable.Range(0, table.RowCount).Where(row => cells.Keeps(table.Id, Row.Of(table, names, row)))];
        hidden = new bool[rows.Length, table.Columns.Length];
        if (TableRules.Of(table.Id) is not { } rule) return; // and so there are no rows
        for (var row = 0; row < rows.Length; row++)
        {
            var read = Row.Of(table, names, rows[row]);
            var (columns, unit) = (rule.Columns(read), rule.Unit(read));
            for (var column = 0; column < table.Columns.Length; column++)
            {
                var name = table.Columns[column].Name;
                var known = columns.TryGetValue(name, out var its);
                hidden[row, column] = !known || cells.Hides(its!, unit);
                if (!known || !hidden[row, column] || cells.Coarse(its!, unit, name, read) is not { } value) continue;
                hidden[row, column] = false;
                coarse.Add((row, column), value);
            }
        }
    }

    public string Id => table.Id;

    public string Title => table.Title;

    public string Meaning => table.Meaning;

    public ImmutableArray<ColumnInfo> Columns => table.Columns;

    public int RowCount => rows.Length;

    /// <summary>How many cells are hidden.</summary>
    public int HiddenCount => hidden.Cast<bool>().Count(cell => cell);

    public Cell CellAt(int row, int column) => hidden[row, column] ? Cell.Hidden : coarse.TryGetValue((row, column), out var value) ? Cell.Number(value) : table.CellAt(rows[row], column);
}
