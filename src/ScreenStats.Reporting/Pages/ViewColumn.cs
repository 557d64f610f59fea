namespace ScreenStats.Reporting.Pages;

/// <summary>A column of the page: one of the table, or two that belong together as limits.</summary>
/// <param name="Name">Name of the table's column.</param>
/// <param name="Heading">Another heading than the table's; null for its own.</param>
/// <param name="Upper">Name of the column that stands beside it in the same cell, joined by "to"; null for none.</param>
/// <param name="WhenEmpty">What an empty cell shows.</param>
internal sealed record ViewColumn(string Name, string? Heading = null, string? Upper = null, string WhenEmpty = "")
{
    /// <summary>The widened limits, which lead.</summary>
    public static ViewColumn Limits { get; } = new("widened_lower", "Limits", "widened_upper");

    /// <summary>Remarks on few counts and on the limits.</summary>
    public static ViewColumn Remark { get; } = new("remark");

    /// <summary>A column of the table under its own heading.</summary>
    public static implicit operator ViewColumn(string name) => new(name);

    /// <summary>The level under a heading of its own, where the whole program has an empty one.</summary>
    public static ViewColumn Level(string heading) => new("level", heading, WhenEmpty: "whole program");
}
