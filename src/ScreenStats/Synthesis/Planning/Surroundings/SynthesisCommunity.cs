using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning.Surroundings;

/// <summary>The rate of the community outside that the program file states.</summary>
public sealed record SynthesisCommunity
{
    /// <summary>positivity, or cases-per-100000-per-week.</summary>
    public string Measure { get; init; } = "positivity";

    /// <summary>Where it comes from.</summary>
    public required string Source { get; init; }

    /// <summary>The values in order of their first days.</summary>
    public required ImmutableArray<SynthesisCommunityValue> Values { get; init; }
}
