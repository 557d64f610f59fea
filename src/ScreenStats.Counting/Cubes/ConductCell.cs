namespace ScreenStats.Counting.Cubes;

/// <summary>Counted runs with a finding of conduct.</summary>
/// <param name="Kind">What was found.</param>
/// <param name="Site">Site of the run.</param>
/// <param name="Lot">Lot of the run, or <see cref="Levels.None"/>.</param>
/// <param name="Runs">Number of runs, positive.</param>
public readonly record struct ConductCell(ConductKind Kind, string Site, string Lot, long Runs);
