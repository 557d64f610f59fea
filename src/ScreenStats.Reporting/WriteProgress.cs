namespace ScreenStats.Reporting;

/// <summary>How far a report is.</summary>
/// <param name="Done">Parts of it that are made: pictures twice, the workbook, the data file, the page.</param>
/// <param name="Total">All its parts.</param>
public readonly record struct WriteProgress(int Done, int Total);
