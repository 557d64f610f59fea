namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>A period of a series smoothed as a level that wanders.</summary>
/// <param name="Value">The value; null where it is missing.</param>
/// <param name="Filtered">The mean of the level by the values up to this one; null before the first value.</param>
/// <param name="FilteredVariance">Its variance; null before the first value.</param>
/// <param name="FilteredBand">Its limits; null before the first value.</param>
/// <param name="Smoothed">The mean of the level by all values.</param>
/// <param name="SmoothedVariance">Its variance.</param>
/// <param name="SmoothedBand">Its limits.</param>
public sealed record GaussianLevelPoint(
    double? Value, double? Filtered, double? FilteredVariance, Interval? FilteredBand, double Smoothed, double SmoothedVariance, Interval SmoothedBand);
