namespace ScreenStats.Evaluation.Trends.Growth;

/// <summary>Over which stretch of time a growth is taken.</summary>
public enum GrowthSegment
{
    /// <summary>The whole span.</summary>
    WholeSpan = 0,

    /// <summary>The last eight complete weeks.</summary>
    RecentEightWeeks = 1,

    /// <summary>The last four complete weeks.</summary>
    RecentFourWeeks = 2,

    /// <summary>From one change of slope to the next.</summary>
    BetweenChanges = 3,

    /// <summary>The mean of the segments between changes, weighted by their lengths.</summary>
    MeanOfSegments = 4,
}
