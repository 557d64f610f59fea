namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>What a predictive value stands on.</summary>
public enum PredictiveValueBasis
{
    /// <summary>The confirmatory test's word over positive runs of the program.</summary>
    Observed = 0,

    /// <summary>The same without the runs of lots flagged for refuted positives.</summary>
    ObservedWithoutFlaggedLots = 1,

    /// <summary>Stated accuracy of a device at a prevalence from outside the program.</summary>
    Expected = 2,
}
