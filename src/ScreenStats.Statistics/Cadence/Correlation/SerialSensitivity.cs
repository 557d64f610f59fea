namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>The sensitivity of one test on a day, as fitted.</summary>
/// <param name="Group">The group of people.</param>
/// <param name="Day">Days since the first positive confirmatory test.</param>
/// <param name="Value">The chance that a test of a person still infected is positive, over people.</param>
public readonly record struct SerialSensitivity(string Group, int Day, double Value);
