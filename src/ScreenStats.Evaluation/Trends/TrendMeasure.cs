namespace ScreenStats.Evaluation.Trends;

/// <summary>What is followed over time.</summary>
public enum TrendMeasure
{
    /// <summary>Positive tests among valid tests.</summary>
    Positivity = 0,

    /// <summary>Inconclusive and invalid runs among all runs.</summary>
    InvalidRuns = 1,

    /// <summary>Confirmed among the positive runs that were confirmed or refuted.</summary>
    PredictiveValue = 2,
}
