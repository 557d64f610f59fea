using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Programs;

/// <summary>A sampling stratum of the audits: which negative runs it holds, by patterns, or how many, by a number.</summary>
public sealed record StratumSettings
{
    /// <summary>Name of the stratum, as it stands in the confirmatory export's sampling_stratum.</summary>
    public string Name { get; init; } = "";

    /// <summary>Patterns (* and ?) of its sites; empty: every site.</summary>
    public ImmutableArray<string> Sites { get; init; } = [];

    /// <summary>Patterns (* and ?) of its lots; empty: every lot, also one that is not recorded.</summary>
    public ImmutableArray<string> Lots { get; init; } = [];

    /// <summary>Who collected its runs; null: anybody.</summary>
    public CollectedBy? Collection { get; init; }

    /// <summary>Its number of negative runs, where that is stated instead of patterns; null: counted by the patterns.</summary>
    public long? Negatives { get; init; }
}
