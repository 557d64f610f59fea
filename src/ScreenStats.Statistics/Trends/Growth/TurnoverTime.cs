using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>The time in which something doubles or halves.</summary>
/// <param name="Kind">Doubling where the growth is above 0, halving where it is below.</param>
/// <param name="Time">The time in the unit of the series, above 0, with limits; the longer one is open where the growth may be nil or of the other sign.</param>
/// <param name="FastestDoubling">The shortest doubling time within the limits of the growth; null where all of them fall or are open.</param>
/// <param name="FastestHalving">The shortest halving time within the limits of the growth; null where all of them rise or are open.</param>
public sealed record TurnoverTime(TurnoverKind Kind, OpenEstimate Time, double? FastestDoubling, double? FastestHalving);
