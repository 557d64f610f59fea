using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>One sheet of a workbook: a heading over each column, and rows of cells.</summary>
/// <param name="Name">Its name; at most 31 letters.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="RowCount">Number of rows under the headings.</param>
/// <param name="CellAt">The cell of a row and a column, both from 0.</param>
internal sealed record Sheet(string Name, ImmutableArray<SheetColumn> Columns, int RowCount, Func<int, int, Cell> CellAt)
{
    /// <summary>The sheet that a cell of the first column leads to, by its row; null for none.</summary>
    public Func<int, string?>? LinkAt { get; init; }
}
