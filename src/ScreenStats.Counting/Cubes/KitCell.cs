namespace ScreenStats.Counting.Cubes;

/// <summary>
/// Counted runs of which the kit is recorded, of one lot at one site on one day. Which kit it was is not kept: there can be millions, and what
/// is wrong with one of them stands in <see cref="ConductCell"/> and in the diagnostics.
/// </summary>
/// <param name="Site">Site name.</param>
/// <param name="Lot">Lot name, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local day of the runs.</param>
/// <param name="Runs">Number of runs, positive.</param>
public readonly record struct KitCell(string Site, string Lot, DateOnly Day, long Runs);
