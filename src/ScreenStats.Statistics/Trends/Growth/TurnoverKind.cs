namespace ScreenStats.Statistics.Trends.Growth;

/// <summary>What a turnover time is the time of.</summary>
public enum TurnoverKind
{
    /// <summary>Of neither: there is no growth, or none is known.</summary>
    None,

    /// <summary>Of doubling.</summary>
    Doubling,

    /// <summary>Of halving.</summary>
    Halving,
}
