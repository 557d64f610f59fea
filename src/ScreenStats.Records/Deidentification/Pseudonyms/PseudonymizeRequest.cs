using System.Collections.Immutable;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>What is to be done to a file. Columns are named by their headings; case, accents, spaces and punctuation make no difference.</summary>
public sealed record PseudonymizeRequest
{
    /// <summary>
    /// The file, as it comes: text with commas, semicolons, tabs or vertical bars, a workbook, newline-delimited FHIR R4 Observations, or one of them
    /// in gzip. The columns of Observations are person, collected_at, result, reported_at and method; nothing else of them is written.
    /// </summary>
    public required string Source { get; init; }

    /// <summary>The file to be written; there must be none of that name.</summary>
    public required string Target { get; init; }

    /// <summary>The file of the key.</summary>
    public required string KeyFile { get; init; }

    /// <summary>True: the key is made, in a new file that only its owner can read. Default false.</summary>
    public bool CreateKey { get; init; }

    /// <summary>Columns that name the people screened.</summary>
    public ImmutableArray<string> Columns { get; init; } = [];

    /// <summary>Columns that name operators: their pseudonyms are made apart, so that an operator cannot be linked to the same employee as a person screened.</summary>
    public ImmutableArray<string> OperatorColumns { get; init; } = [];

    /// <summary>Columns that are left out.</summary>
    public ImmutableArray<string> Drop { get; init; } = [];

    /// <summary>Columns of dates, with what is left of them.</summary>
    public ImmutableArray<(string Column, DatePrecision Precision)> Generalise { get; init; } = [];

    /// <summary>Order of day and month in columns that are generalised; null (default): as the whole column shows.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>The sheet of a workbook that is read; null (default): the one with the headings named.</summary>
    public string? Sheet { get; init; }

    /// <summary>Bytes that the file may be turned into in temporary files; see <see cref="ReadOptions.LargestUnpacked"/>.</summary>
    public long LargestUnpacked { get; init; } = ReadOptions.DefaultLargestUnpacked;
}
