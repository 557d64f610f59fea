namespace ScreenStats.Counting.Cubes;

/// <summary>
/// Counted runs from one kit on one day. Its first and last day of use and the runs of it so far follow from its cells.
/// </summary>
/// <param name="Site">Site name.</param>
/// <param name="Lot">Lot name, or <see cref="Levels.None"/>.</param>
/// <param name="Kit">Kit name; runs without one are in no cell.</param>
/// <param name="Day">Local day of the runs.</param>
/// <param name="Runs">Number of runs, positive.</param>
public readonly record struct KitCell(string Site, string Lot, string Kit, DateOnly Day, long Runs);
