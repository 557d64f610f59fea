namespace ScreenStats.Evaluation.Accuracy;

/// <summary>Whether the data refute a stated specificity.</summary>
public enum ClaimOutcome
{
    /// <summary>No specificity is stated.</summary>
    NotStated = 0,

    /// <summary>The data do not refute it, which is no proof that it holds.</summary>
    NotRefuted = 1,

    /// <summary>Refuted by the positivity alone: fewer tests were positive than a specificity so low would give.</summary>
    TooLow = 2,

    /// <summary>Refuted by the confirmatory test: more positives were refuted than a specificity so high allows.</summary>
    TooHigh = 3,
}
