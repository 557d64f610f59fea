using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Model;

/// <summary>A table as every renderer sees it.</summary>
public interface ITable
{
    /// <summary>Identifier: the base name of its file, lower case, words joined by hyphens.</summary>
    string Id { get; }

    /// <summary>Title for people.</summary>
    string Title { get; }

    /// <summary>What the table shows and how it was made, in a sentence or two.</summary>
    string Meaning { get; }

    /// <summary>The columns.</summary>
    ImmutableArray<ColumnInfo> Columns { get; }

    /// <summary>Number of rows.</summary>
    int RowCount { get; }

    /// <summary>One cell.</summary>
    /// <param name="row">Row, from 0.</param>
    /// <param name="column">Column, from 0.</param>
    /// <returns>The cell.</returns>
    Cell CellAt(int row, int column);
}
