namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>A period of a smoothed rate.</summary>
/// <param name="Count">Its counts.</param>
/// <param name="Filtered">What the periods up to this one say; null where they do not bound the rate yet.</param>
/// <param name="Smoothed">What all periods say.</param>
public sealed record BinomialLevelPoint(PeriodCount Count, LevelEstimate? Filtered, LevelEstimate Smoothed);
