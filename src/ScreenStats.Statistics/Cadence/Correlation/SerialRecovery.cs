namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>How many of the people infected on a day are so still at the next test.</summary>
/// <param name="Day">Days since the first positive confirmatory test.</param>
/// <param name="StillInfected">The share, in [0, 1]; 1 where nobody is taken to recover.</param>
public readonly record struct SerialRecovery(int Day, double StillInfected);
