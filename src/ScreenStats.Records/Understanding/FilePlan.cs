using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Understanding;

/// <summary>How one file is read.</summary>
internal sealed class FilePlan
{
    public required string Path { get; init; }

    /// <summary>The file as it was found; what is read may be made from it.</summary>
    public required string SourcePath { get; init; }

    /// <summary>Length of the file as it was found, in bytes.</summary>
    public required long SourceLength { get; init; }

    /// <summary>What the file is, and whether gzip has compressed it.</summary>
    public required FileForm Form { get; init; }

    /// <summary>The sheet that is read, or null.</summary>
    public string? Sheet { get; init; }

    /// <summary>The lines that are read as lines of the file as it was found.</summary>
    public LineMap Lines { get; init; } = LineMap.Same;

    /// <summary>Name without folder; with the sheet where several of one file are read.</summary>
    public required string Name { get; init; }

    /// <summary>Position among the files of the export.</summary>
    public required int Number { get; init; }

    public required TextEncoding Encoding { get; init; }

    public required byte Delimiter { get; init; }

    /// <summary>Records before the first row: the headings, what stands before them, and a line that states the delimiter.</summary>
    public required int RecordsBeforeRows { get; init; }

    public required IReadOnlyList<string> Headings { get; init; }

    /// <summary>The line of the headings in the file as it was found; 0 where it has none.</summary>
    public required long HeadingLine { get; init; }

    /// <summary>Records before the headings that are not read.</summary>
    public int Preamble { get; init; }

    /// <summary>The field that says why a row is not to be read, or -1.</summary>
    public int AsideField { get; init; } = -1;

    /// <summary>True where years may have two figures.</summary>
    public bool TwoDigitYears { get; init; }

    /// <summary>For each canonical column the field it is read from.</summary>
    public required HeadingMatch[] Matches { get; init; }

    /// <summary>Length of what is read, in bytes.</summary>
    public required long Length { get; init; }

    /// <summary>For each canonical column of dates their order, once settled.</summary>
    public DateOrder?[] DateOrders { get; set; } = [];
}
