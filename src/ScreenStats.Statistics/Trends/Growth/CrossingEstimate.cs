using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>The time at which a line reaches a level.</summary>
/// <param name="Level">The level on the line's scale.</param>
/// <param name="Delta">The time with limits of its standard error.</param>
/// <param name="StandardError">That standard error; null where there is none.</param>
/// <param name="Fieller">The time with Fieller's limits: all times at which the line may have the level; open where its slope may be nil.</param>
/// <param name="Confidence">The confidence of the limits, in (0, 1).</param>
public sealed record CrossingEstimate(double Level, OpenEstimate Delta, double? StandardError, OpenEstimate Fieller, double Confidence);
