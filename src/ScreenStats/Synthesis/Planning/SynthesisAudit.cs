using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning;

/// <summary>A random sample of negative runs whose people give a confirmatory specimen.</summary>
public sealed record SynthesisAudit
{
    /// <summary>Name of the sampling stratum; empty: none is written.</summary>
    public string Stratum { get; init; } = "";

    /// <summary>Sites of the stratum; empty: all that no other stratum names.</summary>
    public ImmutableArray<string> Sites { get; init; } = [];

    /// <summary>Share of negative runs sampled, in [0, 1].</summary>
    public required double Share { get; init; }
}
