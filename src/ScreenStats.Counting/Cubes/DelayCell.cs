namespace ScreenStats.Counting.Cubes;

/// <summary>Waiting times.</summary>
/// <param name="Kind">Which waiting time.</param>
/// <param name="Site">Site of the run; empty for specimen to report.</param>
/// <param name="Minutes">Minutes waited (may be negative from run to specimen); null where no report is recorded ("unresulted").</param>
/// <param name="WholeDays">True where either end has only a date, so that the minutes are whole days.</param>
/// <param name="Count">Number of such delays, positive.</param>
public sealed record DelayCell(DelayKind Kind, string Site, int? Minutes, bool WholeDays, long Count);
