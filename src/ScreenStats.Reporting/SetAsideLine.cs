namespace ScreenStats.Reporting;

/// <summary>A row that was set aside, or that repeats an earlier one.</summary>
/// <param name="File">File without its folder.</param>
/// <param name="Line">Physical line, from 1.</param>
/// <param name="Code">Code of the diagnostic.</param>
/// <param name="Reason">Why, in words that hold no cell of the row.</param>
/// <param name="FirstLine">For a duplicate the line of the first; else null.</param>
/// <param name="Text">The row as it stands in the file, only where it was asked for; else null.</param>
public sealed record SetAsideLine(string File, long Line, string Code, string Reason, long? FirstLine = null, string? Text = null);
