using System.Collections;
using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Model;

/// <summary>A table of findings: rows that stay typed, and columns that say how each is shown.</summary>
/// <typeparam name="TRow">The finding that makes a row.</typeparam>
public sealed class Table<TRow> : ITable, IReadOnlyList<TRow>
{
    private readonly ImmutableArray<Column<TRow>> columns;

    /// <summary>Creates a table.</summary>
    /// <param name="id">Base name of its file.</param>
    /// <param name="title">Title for people.</param>
    /// <param name="meaning">What it shows and how it was made.</param>
    /// <param name="columns">Columns with distinct names.</param>
    /// <param name="rows">Rows in the order in which they are shown.</param>
    /// <exception cref="ArgumentException">Two columns share a name.</exception>
    public Table(string id, string title, string meaning, ImmutableArray<Column<TRow>> columns, ImmutableArray<TRow> rows)
    {
        if (columns.Select(column => column.Name).Distinct(StringComparer.Ordinal).Count() != columns.Length)
        {
            throw new ArgumentException($"Two columns of the table {id} share a name.", nameof(columns));
        }

        Id = id;
        Title = title;
        Meaning = meaning;
        this.columns = columns;
        Rows = rows;
        Columns = [.. columns.Select(column => new ColumnInfo(column.Name, column.Heading, column.Unit, column.Meaning, column.Method))];
    }

    /// <inheritdoc/>
    public string Id { get; }

    /// <inheritdoc/>
    public string Title { get; }

    /// <inheritdoc/>
    public string Meaning { get; }

    /// <inheritdoc/>
    public ImmutableArray<ColumnInfo> Columns { get; }

    /// <summary>The findings, in order.</summary>
    public ImmutableArray<TRow> Rows { get; }

    /// <inheritdoc/>
    public int RowCount => Rows.Length;

    /// <inheritdoc/>
    public int Count => Rows.Length;

    /// <inheritdoc/>
    public TRow this[int index] => Rows[index];

    /// <inheritdoc/>
    public Cell CellAt(int row, int column) => columns[column].Value(Rows[row]);

    /// <summary>The same columns over some of the rows.</summary>
    /// <param name="keep">Which rows to keep.</param>
    /// <returns>A table.</returns>
    public Table<TRow> Only(Func<TRow, bool> keep) => new(Id, Title, Meaning, columns, [.. Rows.Where(keep)]);

    /// <summary>The same columns over the rows in another order, or over some of them.</summary>
    /// <param name="arrange">Puts the rows in order.</param>
    /// <returns>A table.</returns>
    public Table<TRow> Arranged(Func<IEnumerable<TRow>, IEnumerable<TRow>> arrange)
    {
        ArgumentNullException.ThrowIfNull(arrange);
        return new(Id, Title, Meaning, columns, [.. arrange(Rows)]);
    }

    /// <inheritdoc/>
    public IEnumerator<TRow> GetEnumerator() => ((IEnumerable<TRow>)Rows).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
