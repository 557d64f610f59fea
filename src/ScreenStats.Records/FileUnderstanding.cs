using System.Collections.Immutable;

namespace ScreenStats.Records;

/// <summary>How one file was understood.</summary>
/// <param name="Name">Name without its folder.</param>
/// <param name="Encoding">Its encoding in words, such as UTF-8.</param>
/// <param name="Delimiter">Its delimiter in words: comma, semicolon, tab or vertical bar.</param>
/// <param name="Rows">Rows behind the headings, blank lines not counted.</param>
/// <param name="Headings">Its headings from left to right.</param>
public sealed record FileUnderstanding(
    string Name, string Encoding, string Delimiter, long Rows, ImmutableArray<HeadingUnderstanding> Headings);
