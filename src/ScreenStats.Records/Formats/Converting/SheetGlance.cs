namespace ScreenStats.Records.Formats.Converting;

/// <summary>What the first rows of a sheet show.</summary>
/// <param name="Name">The sheet.</param>
/// <param name="Visible">False for a hidden sheet.</param>
/// <param name="HasCells">True where something stands in it.</param>
/// <param name="Fits">True where a row holds the headings of the export.</param>
/// <param name="Recognised">Headings that mean something, in the row with most.</param>
internal sealed record SheetGlance(string Name, bool Visible, bool HasCells, bool Fits, int Recognised = 0);
