namespace ScreenStats.Statistics.Monitoring.Sequential.RiskAdjusted;

/// <summary>An observation with the rate that was expected of it.</summary>
public readonly record struct RatedObservation
{
    /// <summary>An observation.</summary>
    /// <param name="expected">The expected rate, in [0, 1].</param>
    /// <param name="isEvent">Whether it was an event.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside [0, 1].</exception>
    public RatedObservation(double expected, bool isEvent)
    {
        Guard.Probability(expected);
        Expected = expected;
        IsEvent = isEvent;
    }

    /// <summary>The expected rate.</summary>
    public double Expected { get; }

    /// <summary>Whether it was an event.</summary>
    public bool IsEvent { get; }
}
