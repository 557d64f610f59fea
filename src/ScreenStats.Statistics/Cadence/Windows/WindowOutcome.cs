namespace ScreenStats.Statistics.Cadence.Windows;

/// <summary>What a schedule finds and removes of an infection with windows.</summary>
/// <param name="Detection">The chance that a screen finds the infection, before symptoms isolate the person.</param>
/// <param name="FractionRemoved">The share of the infectious time that falls after isolation, by screens or by symptoms; 0 without infectious time.</param>
/// <param name="CaughtBeforeInfectious">The chance that the person is isolated before the infectious time begins; 0 without infectious time.</param>
public readonly record struct WindowOutcome(double Detection, double FractionRemoved, double CaughtBeforeInfectious)
{
    /// <summary>Days that the person is away, by a screen, by symptoms or by both, each day counted once; null where it is not stated how long an isolation is.</summary>
    public double? DaysAway { get; init; }
}
