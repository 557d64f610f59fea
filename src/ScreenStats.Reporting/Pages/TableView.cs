using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>A part of a table as the page shows it. The whole table stands in its file.</summary>
/// <param name="Table">The table, with the rows to show.</param>
/// <param name="Caption">What the part shows.</param>
/// <param name="Columns">The columns to show, in order; the first names the row.</param>
internal sealed record TableView(ITable Table, string Caption, ImmutableArray<ViewColumn> Columns)
{
    /// <summary>So many rows are shown, and printed, before a reader asks for the others.</summary>
    public const int FirstRows = 40;

    /// <summary>Rows that the page has room for; the file has all.</summary>
    public int Room { get; init; } = int.MaxValue;

    /// <summary>Whether the page shows it folded, under its caption: for those who look closer.</summary>
    public bool Folded { get; init; }

    /// <summary>Where it stands in the page: a picture of its figures leads there. Empty before the page is put together.</summary>
    public string Anchor { get; init; } = "";

    /// <summary>Rows that the page has.</summary>
    public int ShownRows => Math.Min(Table.RowCount, Room);

    /// <summary>The place of a column in the table.</summary>
    /// <exception cref="InvalidOperationException">The table has no such column: the page was not kept in step with it.</exception>
    public int IndexOf(string column)
    {
        for (var index = 0; index < Table.Columns.Length; index++)
        {
            if (Table.Columns[index].Name == column) return index;
        }

        throw new InvalidOperationException($"The table {Table.Id} has no column {column}.");
    }
}
