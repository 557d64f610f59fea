namespace ScreenStats.Counting.Cubes;

/// <summary>Days between a person's consecutive counted runs.</summary>
/// <param name="Site">Site of the later run.</param>
/// <param name="Days">Whole calendar days from one run to the next; 0 on the same day.</param>
/// <param name="Count">Number of such gaps, positive.</param>
public sealed record GapCell(string Site, int Days, long Count);
