namespace ScreenStats.Evaluation.Comparisons.Rows;

/// <summary>By what levels are compared.</summary>
public enum ComparisonMeasure
{
    /// <summary>Positives of valid tests.</summary>
    Positivity = 0,

    /// <summary>Inconclusive and invalid runs of all runs.</summary>
    InvalidRuns = 1,

    /// <summary>Refuted of the positives that were confirmed or refuted.</summary>
    Refuted = 2,
}
