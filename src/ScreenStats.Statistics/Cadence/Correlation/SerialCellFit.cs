namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>A cell beside what the fit says of it.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Observed">Its share positive with limits that take each person once (Clopper-Pearson); undefined without people.</param>
/// <param name="Fitted">The share that the fit expects.</param>
/// <param name="Independent">
/// The share that independent misses would give: one less the product of the misses of people who start on each of the days; null where a day has none.
/// </param>
public sealed record SerialCellFit(SerialCell Cell, Estimate Observed, double Fitted, double? Independent);
