namespace ScreenStats.Cli.Terminal;

/// <summary>A column of a table on the screen.</summary>
internal readonly record struct TableColumnPlan(string Heading, bool Right = false);
