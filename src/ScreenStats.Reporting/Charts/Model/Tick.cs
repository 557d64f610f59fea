namespace ScreenStats.Reporting.Charts.Model;

/// <summary>A labelled place on an axis.</summary>
/// <param name="Position">In the axis' units.</param>
/// <param name="Label">As printed.</param>
internal sealed record Tick(double Position, string Label)
{
    /// <summary>The whole name of the level that it names; null for a number, a day, a word.</summary>
    public string? Level { get; init; }
}
