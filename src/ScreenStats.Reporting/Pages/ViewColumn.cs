namespace ScreenStats.Reporting.Pages;

/// <summary>A column of the page: one of the table, or two that belong together as limits.</summary>
/// <param name="Name">Name of the table's column.</param>
/// <param name="Heading">Another heading than the table's; null for its own.</param>
/// <param name="Upper">Name of the column that stands beside it in the same cell, joined by "to"; null for none.</param>
/// <param name="WhenEmpty">What an empty cell shows.</param>
/// <param name="Kind">Name of a column whose word stands before a cell that is not empty: "site North"; null for none.</param>
/// <param name="AsNotes">Whether its texts stand below the table, and a letter in it.</param>
internal sealed record ViewColumn(
    string Name, string? Heading = null, string? Upper = null, string WhenEmpty = "", string? Kind = null, bool AsNotes = false)
{
    /// <summary>Names of the two columns whose values stand below the figure, in the same cell, as its limits; null for none.</summary>
    public (string Lower, string Upper)? Below { get; init; }

    /// <summary>Whether its texts stay on one line.</summary>
    public bool OneLine { get; init; }

    /// <summary>The widened limits, which lead.</summary>
    public static ViewColumn Limits { get; } = new("widened_lower", "Limits", "widened_upper");

    /// <summary>Remarks on few counts and on the limits.</summary>
    public static ViewColumn Remark { get; } = new("remark", "Note", AsNotes: true);

    /// <summary>The part of the program: what it is, and its name.</summary>
    public static ViewColumn Part { get; } = new("level", "Part", WhenEmpty: "whole program", Kind: "by");

    /// <summary>A column of the table under its own heading.</summary>
    public static implicit operator ViewColumn(string name) => new(name);

    /// <summary>The level under a heading of its own, where the whole program has an empty one.</summary>
    public static ViewColumn Level(string heading) => new("level", heading, WhenEmpty: "whole program");
}
