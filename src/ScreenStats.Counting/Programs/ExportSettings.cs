using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs;

/// <summary>Where one export is and how it is understood.</summary>
public sealed record ExportSettings
{
    /// <summary>File names or patterns (* and ?) relative to the program's folder; empty: the default pattern of this export.</summary>
    public ImmutableArray<string> Files { get; init; } = [];

    /// <summary>Canonical column name to the heading in the files.</summary>
    public ImmutableSortedDictionary<string, string> Columns { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>Word in the files to the canonical word, for every column of this export.</summary>
    public ImmutableSortedDictionary<string, string> Words { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>The order of day and month in dates; null: ISO 8601, or another where a whole column leaves no doubt.</summary>
    public DateOrder? DateOrder { get; init; }
}
