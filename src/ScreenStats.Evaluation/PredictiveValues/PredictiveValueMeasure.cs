namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>Which predictive value.</summary>
public enum PredictiveValueMeasure
{
    /// <summary>Of the positive runs, the share with the infection.</summary>
    PositivePredictiveValue = 0,

    /// <summary>Of the negative runs, the share without the infection.</summary>
    NegativePredictiveValue = 1,
}
