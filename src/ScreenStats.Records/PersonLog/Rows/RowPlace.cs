namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>Where a row stands.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Line">Physical line, from 1.</param>
internal sealed record RowPlace(string File, long Line);
