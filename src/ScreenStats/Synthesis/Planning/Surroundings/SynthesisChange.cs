using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning.Surroundings;

/// <summary>A dated change that the program file names. It changes nothing by itself: what a change does is stated where it is done.</summary>
public sealed record SynthesisChange
{
    /// <summary>First day on which it held.</summary>
    public required DateOnly On { get; init; }

    /// <summary>What changed, in a few words.</summary>
    public required string What { get; init; }

    /// <summary>Sites that it touched; empty: all.</summary>
    public ImmutableArray<string> Sites { get; init; } = [];
}
