using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts;

/// <summary>A stacked bar.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Parts">Its parts, from left to right.</param>
internal sealed record StackRow(string Name, ImmutableArray<StackPart> Parts)
{
    /// <summary>The share up to where the undecided parts begin, with its limits; null for none.</summary>
    public ChartPoint? Settled { get; init; }
}
