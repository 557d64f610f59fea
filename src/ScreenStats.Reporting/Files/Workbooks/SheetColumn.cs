namespace ScreenStats.Reporting.Files.Workbooks;

/// <summary>One column of a sheet.</summary>
/// <param name="Heading">Heading, with the unit where there is one.</param>
/// <param name="Format">How its numbers and days are shown, in the codes of spreadsheets; empty for texts.</param>
/// <param name="Width">Width in letters.</param>
/// <param name="Wraps">Whether long texts go over several lines.</param>
internal sealed record SheetColumn(string Heading, string Format, int Width, bool Wraps = false);
