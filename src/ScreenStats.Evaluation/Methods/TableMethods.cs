using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Which method made the numbers of a table.</summary>
public static class TableMethods
{
    private const string Column = "method";
    private static readonly string[] Ends = ["estimate", "lower", "upper"];

    /// <summary>
    /// The column that names the method of a column's numbers, row by row: <c>widened_method</c> for <c>widened_lower</c> where there is
    /// one, else <c>method</c>.
    /// </summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Position of the column.</param>
    /// <returns>Position of the naming column; -1 where the column has one method of its own, or none names it.</returns>
    public static int NamedBy(ITable table, int column)
    {
        ArgumentNullException.ThrowIfNull(table);
        var info = table.Columns[column];
        if (info.Method is not null || !NeedsMethod(info)) return -1;
        foreach (var end in Ends)
        {
            if (!info.Name.EndsWith(end, StringComparison.Ordinal)) continue;
            var own = IndexOf(table, info.Name[..^end.Length] + Column);
            if (own >= 0) return own;
        }

        return IndexOf(table, Column);
    }

    /// <summary>Whether a column holds figures that some method made: all but counts, texts, days and the confidence that was asked for.</summary>
    /// <param name="column">The column.</param>
    /// <returns>True where it must name a method.</returns>
    public static bool NeedsMethod(ColumnInfo column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return column.Unit is not (Unit.Text or Unit.Count or Unit.Date) && column.Name != "confidence";
    }

    /// <summary>The method of one cell.</summary>
    /// <param name="table">The table.</param>
    /// <param name="row">Its row.</param>
    /// <param name="column">Its column.</param>
    /// <returns>Name of the method; null for a cell without a number, and where none is named.</returns>
    public static string? Of(ITable table, int row, int column)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!NeedsMethod(table.Columns[column]) || table.CellAt(row, column).Kind is not CellKind.Number) return null;
        if (table.Columns[column].Method is { } method) return method;
        var named = NamedBy(table, column);
        return named >= 0 && table.CellAt(row, named) is { Kind: CellKind.Text } cell ? cell.AsText : null;
    }

    /// <summary>Every method that made a number of a table.</summary>
    /// <param name="table">The table.</param>
    /// <returns>Names, each once, in the order in which they come.</returns>
    public static ImmutableArray<string> Of(ITable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var names = new List<string>();
        for (var column = 0; column < table.Columns.Length; column++)
        {
            if (!NeedsMethod(table.Columns[column])) continue;
            for (var row = 0; row < table.RowCount; row++)
            {
                if (Of(table, row, column) is not { } name) continue;
                if (!names.Contains(name)) names.Add(name);
                if (table.Columns[column].Method is not null) break;
            }
        }

        return [.. names];
    }

    private static int IndexOf(ITable table, string name)
    {
        for (var index = 0; index < table.Columns.Length; index++)
        {
            if (table.Columns[index].Name == name) return index;
        }

        return -1;
    }
}
