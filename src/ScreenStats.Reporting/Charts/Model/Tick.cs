namespace ScreenStats.Reporting.Charts.Model;

/// <summary>A labelled place on an axis.</summary>
/// <param name="Position">In the axis' units.</param>
/// <param name="Label">As printed.</param>
internal sealed record Tick(double Position, string Label);
