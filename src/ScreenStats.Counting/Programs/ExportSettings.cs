using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs;

/// <summary>Where one export is and how it is understood.</summary>
public sealed record ExportSettings
{
    /// <summary>
    /// File names, patterns (* and ?) or folders, relative to the program's folder and inside it; empty: the default
    /// names of this export.
    /// </summary>
    public ImmutableArray<string> Files { get; init; } = [];

    /// <summary>Names or patterns (* and ?) of the sheets of workbooks to read; empty: the one sheet whose headings fit.</summary>
    public ImmutableArray<string> Sheets { get; init; } = [];

    /// <summary>Canonical column name to the heading in the files.</summary>
    public ImmutableSortedDictionary<string, string> Columns { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>Word in the files to the canonical word, for every column of this export.</summary>
    public ImmutableSortedDictionary<string, string> Words { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>The order of day and month in dates; null: ISO 8601, or another where a whole column leaves no doubt.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>True: a date may end in a year of two figures, which is one of the years 2000 to 2099. Default false: such a date is not read.</summary>
    public bool TwoDigitYears { get; init; }
}
