namespace ScreenStats.Records.Validation;

/// <summary>A row that was set aside while reading.</summary>
/// <param name="Place">Where.</param>
/// <param name="Finding">Why.</param>
/// <param name="Column">Position of the column among the export's canonical columns.</param>
/// <param name="Text">The row, where it was asked for.</param>
/// <param name="Record">Position of the row in its block, by which it is found again.</param>
internal sealed record SetAsideEntry(long Place, Finding Finding, int Column, string? Text, uint Record);
