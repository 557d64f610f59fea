namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>A dated change: what may be other from then on.</summary>
/// <param name="At">The first time at which the change holds.</param>
/// <param name="Level">Whether the level may jump.</param>
/// <param name="Slope">Whether the growth may be another.</param>
/// <param name="SlopeFrom">
/// The time from which the new growth counts, at which the jump is measured; null for <paramref name="At"/>. One period before it, the first period of the change has grown
/// once already, as some authors write it.
/// </param>
public sealed record Interruption(double At, bool Level = true, bool Slope = false, double? SlopeFrom = null);
