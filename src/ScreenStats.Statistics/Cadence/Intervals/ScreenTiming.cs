namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>How the screens of a person lie in time.</summary>
public enum ScreenTiming
{
    /// <summary>Every so many days, the infection falling anywhere between two screens with the same chance.</summary>
    Regular,

    /// <summary>At random times that average the interval (a Poisson process), each independent of the last.</summary>
    AtRandom,
}
