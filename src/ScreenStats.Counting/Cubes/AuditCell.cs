namespace ScreenStats.Counting.Cubes;

/// <summary>Negative runs that were verified by an audit specimen.</summary>
/// <param name="Site">Site of the run.</param>
/// <param name="Lot">Lot of the run, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local day of the run.</param>
/// <param name="Stratum">Sampling stratum of the audit specimen, or <see cref="Levels.None"/>.</param>
/// <param name="Result">Missed, Agreed or Unresolved.</param>
/// <param name="Runs">Number of runs, positive.</param>
public sealed record AuditCell(string Site, string Lot, DateOnly Day, string Stratum, FollowUp Result, long Runs);
