using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Understanding;

/// <summary>How one file is read.</summary>
internal sealed class FilePlan
{
    public required string Path { get; init; }

    /// <summary>Name without folder.</summary>
    public required string Name { get; init; }

    /// <summary>Position among the files of the export.</summary>
    public required int Number { get; init; }

    public required TextEncoding Encoding { get; init; }

    public required byte Delimiter { get; init; }

    /// <summary>Records before the first row: the headings, and a line that states the delimiter.</summary>
    public required int RecordsBeforeRows { get; init; }

    public required IReadOnlyList<string> Headings { get; init; }

    /// <summary>For each canonical column the field it is read from.</summary>
    public required HeadingMatch[] Matches { get; init; }

    /// <summary>Length of the file in bytes.</summary>
    public required long Length { get; init; }

    /// <summary>For each canonical column of dates their order, once settled.</summary>
    public DateOrder?[] DateOrders { get; set; } = [];
}
