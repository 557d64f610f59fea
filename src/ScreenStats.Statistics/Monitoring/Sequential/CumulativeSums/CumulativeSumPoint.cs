namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>A cumulative sum after an observation.</summary>
/// <param name="Added">What the observation added.</param>
/// <param name="Statistic">The statistic.</param>
/// <param name="Signals">Whether it signals.</param>
public readonly record struct CumulativeSumPoint(double Added, double Statistic, bool Signals);
