namespace ScreenStats.Reporting.Html.Tables;

/// <summary>A cell as the page shows it.</summary>
/// <param name="Text">What stands in it.</param>
/// <param name="Below">What stands below that in small type; empty for nothing.</param>
/// <param name="Style">Its classes in the style sheet.</param>
internal readonly record struct TableCell(string Text, string Below, string Style);
