namespace ScreenStats.Statistics.Funnels;

/// <summary>Where a group lies between the limits of a funnel.</summary>
public enum FunnelStanding
{
    /// <summary>Within the limits, or on one of them.</summary>
    Within,

    /// <summary>Above the upper limit.</summary>
    Above,

    /// <summary>Below the lower limit.</summary>
    Below,
}
