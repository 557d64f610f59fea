namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>When a cumulative sum signals. On a lattice the two differ by one step of the limit.</summary>
public enum SignalRule
{
    /// <summary>The statistic is at or above the limit.</summary>
    AtOrAbove,

    /// <summary>The statistic is above the limit.</summary>
    Above,
}
