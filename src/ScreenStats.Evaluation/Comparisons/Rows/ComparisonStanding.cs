namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>Where a level lies against the limits of the funnel.</summary>
public enum ComparisonStanding
{
    /// <summary>It cannot be placed.</summary>
    NotPlaced = 0,

    /// <summary>Within the limits, or on one of them.</summary>
    Within = 1,

    /// <summary>Above them.</summary>
    Above = 2,

    /// <summary>Below them.</summary>
    Below = 3,
}
