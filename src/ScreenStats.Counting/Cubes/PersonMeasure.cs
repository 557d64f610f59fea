namespace ScreenStats.Counting.Cubes;

/// <summary>Which of a person's runs are trials (n) and which are events (x).</summary>
public enum PersonMeasure
{
    /// <summary>Trials: valid tests. Events: positive runs.</summary>
    Positivity = 0,

    /// <summary>Trials: runs. Events: inconclusive and invalid runs.</summary>
    InvalidRuns = 1,

    /// <summary>Trials: positive runs that were confirmed or refuted. Events: confirmed ones.</summary>
    PredictiveValue = 2,

    /// <summary>Trials: valid tests. Events: refuted positive runs.</summary>
    Refuted = 3,
}
