namespace ScreenStats.Statistics.Comparison;

/// <summary>How two proportions are set against each other.</summary>
public enum ContrastMeasure
{
    /// <summary>First minus second proportion.</summary>
    Difference,

    /// <summary>First divided by second proportion.</summary>
    Ratio,

    /// <summary>Odds of the first divided by odds of the second.</summary>
    OddsRatio,
}
