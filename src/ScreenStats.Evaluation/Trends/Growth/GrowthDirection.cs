namespace ScreenStats.Evaluation.Trends.Growth;

/// <summary>What a growth with its limits says.</summary>
public enum GrowthDirection
{
    /// <summary>The limits hold no change, so either way is possible; or there is no growth to speak of.</summary>
    CannotTell = 0,

    /// <summary>Both limits are above no change.</summary>
    Rises = 1,

    /// <summary>Both limits are below no change.</summary>
    Falls = 2,
}
