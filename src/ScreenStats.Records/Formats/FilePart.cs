namespace ScreenStats.Records.Formats;

/// <summary>Text that is read for a file: the file itself, or what a file of another format was turned into.</summary>
/// <param name="Path">Where the text is.</param>
/// <param name="Sheet">The sheet of a workbook it comes from; null where there are no sheets.</param>
/// <param name="OneOfSeveral">True where the file has other parts, so that messages name the sheet.</param>
/// <param name="Lines">Its lines as lines of the original file.</param>
/// <param name="Shape">Its form, where that is known because it was made here; null where it is to be found out.</param>
internal sealed record FilePart(string Path, string? Sheet, bool OneOfSeveral, LineMap Lines, FileShape? Shape = null);
