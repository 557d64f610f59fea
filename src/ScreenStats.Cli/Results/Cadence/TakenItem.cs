namespace ScreenStats.Cli.Results.Cadence;

/// <summary>A figure that was taken from a program, because the line left it out.</summary>
internal sealed record TakenItem(string Name, Figure Value, string From);
