namespace ScreenStats.Records.Formats;

/// <summary>What the beginning of a file shows of its form.</summary>
/// <param name="Encoding">How characters are written.</param>
/// <param name="Delimiter">What stands between fields.</param>
/// <param name="Headings">The headings, trimmed.</param>
/// <param name="HeadingLine">The line of the headings, from 1.</param>
/// <param name="RecordsBeforeRows">Records up to and including the headings.</param>
/// <param name="Preamble">Records of them that stand before the headings and are no statement of the delimiter.</param>
/// <param name="HasRows">False where nothing follows the headings.</param>
/// <param name="Length">Bytes of the file.</param>
internal sealed record FileShape(
    TextEncoding Encoding, byte Delimiter, IReadOnlyList<string> Headings, int HeadingLine, int RecordsBeforeRows, int Preamble, bool HasRows, long Length);
