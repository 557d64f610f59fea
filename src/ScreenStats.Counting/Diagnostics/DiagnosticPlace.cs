namespace ScreenStats.Counting.Diagnostics;

/// <summary>Where something was found.</summary>
/// <param name="File">Name of the file without its folder.</param>
/// <param name="Line">Physical line, or row of a sheet, from 1.</param>
public sealed record DiagnosticPlace(string File, long Line);
