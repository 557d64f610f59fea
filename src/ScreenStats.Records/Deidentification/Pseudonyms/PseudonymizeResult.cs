using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>What was done to a file. Holds no value of it.</summary>
/// <param name="Rows">Rows read and written.</param>
/// <param name="Encoding">How the characters of the source are written; the target is UTF-8.</param>
/// <param name="Delimiter">What stands between fields, in both.</param>
/// <param name="KeyCreated">Whether the key was made.</param>
/// <param name="LinesDropped">Lines before the headings that were left out, as they belong to no column.</param>
/// <param name="Columns">Every column of the source, in order.</param>
/// <param name="Diagnostics">What its owner should look at before the file leaves.</param>
public sealed record PseudonymizeResult(
    long Rows, string Encoding, string Delimiter, bool KeyCreated, long LinesDropped,
    ImmutableArray<PseudonymizedColumn> Columns, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>What the file was read as, in words.</summary>
    public string Format { get; init; } = "";

    /// <summary>The sheet that was read; null where there are none.</summary>
    public string? Sheet { get; init; }

    /// <summary>Line, or row of the sheet, of the headings; null where it has none.</summary>
    public long? HeadingLine { get; init; }

    /// <summary>Lines of totals that were left out.</summary>
    public long TotalsDropped { get; init; }

    /// <summary>Resources that are not to be read and were left out.</summary>
    public long ResourcesDropped { get; init; }
}
