namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>Among whom the contacts of a case fall.</summary>
public enum ContactPool
{
    /// <summary>Those at the workplace who can be screened: uninfected, exposed and infectious. The recovered are left out.</summary>
    Circulating,

    /// <summary>Those and the recovered, who come back.</summary>
    CirculatingAndRecovered,

    /// <summary>Everybody, also those isolated or dead.</summary>
    Everybody,
}
