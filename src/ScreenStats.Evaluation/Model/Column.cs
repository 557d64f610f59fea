namespace ScreenStats.Evaluation.Model;

/// <summary>One column of a table.</summary>
/// <typeparam name="TRow">The finding that makes a row.</typeparam>
/// <param name="Name">Name in files: lower case, words joined by underscores.</param>
/// <param name="Heading">Heading for people.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Meaning">What stands in it, in one sentence.</param>
/// <param name="Value">The cell of a row.</param>
public sealed record Column<TRow>(string Name, string Heading, Unit Unit, string Meaning, Func<TRow, Cell> Value)
{
    /// <summary>The method that made every number of the column, by its name in the catalogue of methods; null where another column names it row by row.</summary>
    public string? Method { get; init; }
}
