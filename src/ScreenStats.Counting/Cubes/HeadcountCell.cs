namespace ScreenStats.Counting.Cubes;

/// <summary>People eligible for screening at a site in a week.</summary>
/// <param name="Site">Site name.</param>
/// <param name="Week">Monday of the ISO week.</param>
/// <param name="Eligible">Number of people.</param>
public sealed record HeadcountCell(string Site, DateOnly Week, long Eligible);
