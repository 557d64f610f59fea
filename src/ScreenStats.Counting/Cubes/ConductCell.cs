namespace ScreenStats.Counting.Cubes;

/// <summary>Counted runs with a finding of conduct.</summary>
/// <param name="Kind">What was found.</param>
/// <param name="Site">Site of the run.</param>
/// <param name="Lot">Lot of the run, or <see cref="Levels.None"/>.</param>
/// <param name="Day">
/// Local day on which it could be known: the run's, but for a run within isolation no earlier than the day on which the confirmatory positive was reported.
/// </param>
/// <param name="Runs">Number of runs, positive.</param>
public sealed record ConductCell(ConductKind Kind, string Site, string Lot, DateOnly Day, long Runs);
