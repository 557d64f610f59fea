namespace ScreenStats.Evaluation.Model;

/// <summary>What a renderer needs to know of a column.</summary>
/// <param name="Name">Name in files: lower case, words joined by underscores.</param>
/// <param name="Heading">Heading for people.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Meaning">What stands in it, in one sentence.</param>
/// <param name="Method">The method that made every number of the column; null where another column names it row by row.</param>
public sealed record ColumnInfo(string Name, string Heading, Unit Unit, string Meaning, string? Method = null);
