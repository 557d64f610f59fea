using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Reporting;

/// <summary>What a report says about where its findings come from. Everything has a default: findings alone make a report.</summary>
public sealed record ReportInputs
{
    /// <summary>Version of the program that made the report; null for that of this library.</summary>
    public string? Version { get; init; }

    /// <summary>Options by name as they were given, without paths; shown in the order of their names.</summary>
    public ImmutableSortedDictionary<string, string> Options { get; init; } = ImmutableSortedDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal);

    /// <summary>Seed of simulations; null where there was none.</summary>
    public long? Seed { get; init; }

    /// <summary>The files that were read.</summary>
    public ImmutableArray<InputFile> Files { get; init; } = [];

    /// <summary>What was found in the data, in the order of its rows.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; init; } = [];

    /// <summary>The rows that are not counted because they cannot be read or repeat another, in the order of the files. Read once.</summary>
    public IEnumerable<SetAsideLine> SetAside { get; init; } = [];
}
