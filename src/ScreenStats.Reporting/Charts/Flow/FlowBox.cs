using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Flow;

/// <summary>A box of a flow diagram.</summary>
/// <param name="Name">What is in it.</param>
/// <param name="Count">How many, as printed; empty for a heading over its lines.</param>
internal sealed record FlowBox(string Name, string Count)
{
    /// <summary>What it is made of, each with how many.</summary>
    public ImmutableArray<(string Name, string Count)> Lines { get; init; } = [];
}
