using ScreenStats.Evaluation.Changes.Rows;

namespace ScreenStats.Evaluation.Changes;

/// <summary>The words of what has changed: in files lower case joined by hyphens, in sentences as they are read.</summary>
internal static class Words
{
    public static string Of(ChangeMeasure measure) => measure switch
    {
        ChangeMeasure.PositivePredictiveValue => "positive-predictive-value",
        ChangeMeasure.Positivity => "positivity",
        ChangeMeasure.ConfirmedPerValidTest => "confirmed-per-valid-test",
        ChangeMeasure.RefutedPerValidTest => "refuted-per-valid-test",
        ChangeMeasure.InvalidRuns => "invalid-runs",
        ChangeMeasure.FollowUp => "follow-up",
        ChangeMeasure.CasesPerPersonWeek => "cases-per-person-week",
        ChangeMeasure.NegativePredictiveValue => "negative-predictive-value",
        ChangeMeasure.Coverage => "coverage",
        ChangeMeasure.Sensitivity => "sensitivity",
        ChangeMeasure.Specificity => "specificity",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a member of the enumeration."),
    };

    public static string Of(ChangeBasis basis) => basis switch
    {
        ChangeBasis.SeparateSpans => "separate-spans",
        ChangeBasis.AddedSince => "added-since",
        ChangeBasis.PeriodsSince => "periods-since",
        ChangeBasis.PeriodsNotShared => "periods-not-shared",
        ChangeBasis.WholeValues => "whole-values",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a member of the enumeration."),
    };

    public static string Of(FlagChange change) => change switch
    {
        FlagChange.NewFlag => "new-flag",
        FlagChange.StillFlagged => "still-flagged",
        FlagChange.ClosedFlag => "closed-flag",
        FlagChange.FlaggedAndGone => "flagged-and-gone",
        FlagChange.New => "new",
        FlagChange.Gone => "gone",
        FlagChange.PartlyClosed => "partly-closed",
        _ => throw new ArgumentOutOfRangeException(nameof(change), change, "Not a member of the enumeration."),
    };

    /// <summary>What a measure is called at the beginning of a sentence.</summary>
    public static string Name(ChangeMeasure measure) => measure switch
    {
        ChangeMeasure.PositivePredictiveValue => "Of positives that were confirmed or refuted, those confirmed",
        ChangeMeasure.Positivity => "Positive of valid tests",
        ChangeMeasure.ConfirmedPerValidTest => "Confirmed positives of valid tests",
        ChangeMeasure.RefutedPerValidTest => "Refuted positives of valid tests",
        ChangeMeasure.InvalidRuns => "Inconclusive and invalid runs",
        ChangeMeasure.FollowUp => "Positives with a conclusive confirmatory result",
        ChangeMeasure.CasesPerPersonWeek => "Cases for each week of a person",
        ChangeMeasure.NegativePredictiveValue => "Audited negatives that the confirmatory test agreed with",
        ChangeMeasure.Coverage => "People tested of those eligible, by week",
        ChangeMeasure.Sensitivity => "Sensitivity",
        ChangeMeasure.Specificity => "Specificity",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a member of the enumeration."),
    };
}
