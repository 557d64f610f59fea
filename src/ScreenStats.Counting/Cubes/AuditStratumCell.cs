namespace ScreenStats.Counting.Cubes;

/// <summary>A sampling stratum of the audits and how many negative runs it holds.</summary>
/// <param name="Stratum">Its name; <see cref="Levels.None"/> where none is recorded, or where labels are not explained.</param>
/// <param name="Origin">How its negative runs are known.</param>
/// <param name="Negatives">Counted negative runs in it, audited or not; the number in the program file where that states one.</param>
public sealed record AuditStratumCell(string Stratum, StratumOrigin Origin, long Negatives);
