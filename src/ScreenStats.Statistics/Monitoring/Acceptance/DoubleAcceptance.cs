namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>The chance that a double plan accepts a lot, by the sample that decides.</summary>
/// <param name="OnFirst">The chance of acceptance on the first sample, in [0, 1].</param>
/// <param name="OnSecond">The chance of acceptance on the second, in [0, 1].</param>
/// <param name="ExpectedSize">Items tested on average, each sample drawn being tested in full.</param>
public readonly record struct DoubleAcceptance(double OnFirst, double OnSecond, double ExpectedSize)
{
    /// <summary>The chance of acceptance.</summary>
    public double Total => Math.Min(1, OnFirst + OnSecond);
}
