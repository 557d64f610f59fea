namespace ScreenStats.Counting.Cubes;

/// <summary>What the export of sites says of a site.</summary>
/// <param name="Site">Site name.</param>
/// <param name="Region">Region name, or <see cref="Levels.None"/> where the row names none.</param>
public sealed record SiteCell(string Site, string Region);
