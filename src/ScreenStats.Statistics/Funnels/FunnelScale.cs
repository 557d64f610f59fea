namespace ScreenStats.Statistics.Funnels;

/// <summary>On which scale scores and overdispersion are taken.</summary>
public enum FunnelScale
{
    /// <summary>The proportion itself, with the standard error at the target.</summary>
    Proportion,

    /// <summary>The arcsine of its root, whose standard error does not depend on the rate: better at small rates.</summary>
    ArcsineRoot,
}
