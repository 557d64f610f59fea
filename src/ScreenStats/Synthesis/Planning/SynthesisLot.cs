using System.Collections.Immutable;

namespace ScreenStats.Synthesis.Planning;

/// <summary>One production lot: where and when it was in use, and what was wrong with it.</summary>
public sealed record SynthesisLot
{
    /// <summary>Name of the lot.</summary>
    public required string Name { get; init; }

    /// <summary>Name of the device it belongs to.</summary>
    public required string Kit { get; init; }

    /// <summary>Sites that use it; empty: all.</summary>
    public ImmutableArray<string> Sites { get; init; } = [];

    /// <summary>First day in use; null: from the start.</summary>
    public DateOnly? From { get; init; }

    /// <summary>Last day in use; null: to the end.</summary>
    public DateOnly? To { get; init; }

    /// <summary>Last day on which it may be used; null: not written.</summary>
    public DateOnly? Expires { get; init; }

    /// <summary>What is wrong with it; null: nothing.</summary>
    public SynthesisFault? Fault { get; init; }
}
