namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>What the limits of a growth say of its direction.</summary>
public enum TrendDirection
{
    /// <summary>The limits span no change.</summary>
    CannotTell,

    /// <summary>Both limits lie above no change.</summary>
    Rising,

    /// <summary>Both limits lie below no change.</summary>
    Falling,
}
