namespace ScreenStats.Records;

/// <summary>A row that is not counted because something is wrong with it, or because it repeats another.</summary>
/// <param name="File">Name of the file without its folder.</param>
/// <param name="Line">Line on which the row starts, from 1.</param>
/// <param name="Code">Stable code from the catalogue of diagnostics.</param>
/// <param name="Reason">Why, in words; never the text of a cell.</param>
/// <param name="FirstLine">For a duplicate or a conflict, the line of the earlier row; else null.</param>
/// <param name="Text">The row as it stands in the file, where that was asked for; else null.</param>
public sealed record SetAsideRow(string File, long Line, string Code, string Reason, long? FirstLine, string? Text);
