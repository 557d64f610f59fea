namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>What is compared between two evaluations.</summary>
public enum ChangeMeasure
{
    /// <summary>Confirmed positives among positives that were confirmed or refuted.</summary>
    PositivePredictiveValue = 0,

    /// <summary>Positive tests among valid tests.</summary>
    Positivity = 1,

    /// <summary>Confirmed positives among valid tests.</summary>
    ConfirmedPerValidTest = 2,

    /// <summary>Refuted positives among valid tests.</summary>
    RefutedPerValidTest = 3,

    /// <summary>Inconclusive and invalid runs among all runs.</summary>
    InvalidRuns = 4,

    /// <summary>Positives with a conclusive confirmatory result among all positives.</summary>
    FollowUp = 5,

    /// <summary>Cases among person-weeks.</summary>
    CasesPerPersonWeek = 6,

    /// <summary>Audited negatives that the confirmatory test agreed with.</summary>
    NegativePredictiveValue = 7,

    /// <summary>People tested among people eligible, by week.</summary>
    Coverage = 8,

    /// <summary>Infected people whom the screen found, as estimated from audits.</summary>
    Sensitivity = 9,

    /// <summary>People without infection whose screen was negative, as estimated from audits.</summary>
    Specificity = 10,
}
