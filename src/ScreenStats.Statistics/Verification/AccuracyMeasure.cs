namespace ScreenStats.Statistics.Verification;

/// <summary>The five figures that a screen compared with a confirmatory test has.</summary>
public enum AccuracyMeasure
{
    /// <summary>Positive screens among the people with the condition.</summary>
    Sensitivity,

    /// <summary>Negative screens among the people without the condition.</summary>
    Specificity,

    /// <summary>People with the condition among all screened.</summary>
    Prevalence,

    /// <summary>People with the condition among the positive screens.</summary>
    PositivePredictiveValue,

    /// <summary>People without the condition among the negative screens.</summary>
    NegativePredictiveValue,
}
