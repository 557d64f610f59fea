using System.Collections.Immutable;

namespace ScreenStats.Records;

/// <summary>How one file was understood.</summary>
/// <param name="Name">Name without its folder; with the sheet where several of one workbook are read.</param>
/// <param name="Format">Its format in words: delimited text, workbook, or FHIR R4 Observation resources; with "in gzip" where it is compressed.</param>
/// <param name="Encoding">The encoding of text in words, such as UTF-8; null for a workbook.</param>
/// <param name="Delimiter">The delimiter of text in words: comma, semicolon, tab or vertical bar; else null.</param>
/// <param name="Sheet">The sheet of a workbook; else null.</param>
/// <param name="HeadingLine">Line or row of the headings, from 1; null where the format has none.</param>
/// <param name="LinesBeforeHeadings">Records that stand before the headings and are not read, blank lines not counted.</param>
/// <param name="Rows">Rows behind the headings, blank lines not counted.</param>
/// <param name="Headings">Its headings from left to right.</param>
public sealed record FileUnderstanding(
    string Name, string Format, string? Encoding, string? Delimiter, string? Sheet, long? HeadingLine, int LinesBeforeHeadings, long Rows, ImmutableArray<HeadingUnderstanding> Headings)
{
    /// <summary>Its path relative to the program's folder, with slashes.</summary>
    public string Path { get; init; } = "";
}
