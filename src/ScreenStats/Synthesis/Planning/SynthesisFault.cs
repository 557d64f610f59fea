using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning;

/// <summary>A burst of false positives of one lot.</summary>
public sealed record SynthesisFault
{
    /// <summary>Sites where it shows; empty: all that use the lot.</summary>
    public ImmutableArray<string> Sites { get; init; } = [];

    /// <summary>First day; null: from the start.</summary>
    public DateOnly? From { get; init; }

    /// <summary>Last day; null: to the end.</summary>
    public DateOnly? To { get; init; }

    /// <summary>Chance of a positive result in a person without detectable infection while it lasts, in [0, 1].</summary>
    public required double FalsePositiveRate { get; init; }
}
