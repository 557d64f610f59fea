using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>accuracy</c> answers.</summary>
internal sealed record AccuracyResult(
    VerifiedRow ScreenPositive,
    VerifiedRow ScreenNegative,
    double Confidence,
    AccuracyMethods Methods,
    AccuracyItem Sensitivity,
    AccuracyItem Specificity,
    AccuracyItem Prevalence,
    AccuracyItem PositivePredictiveValue,
    AccuracyItem NegativePredictiveValue,
    ImmutableArray<CovarianceItem> Covariances,
    CompletedTable CompletedTable,
    BoundedItem FalsePositivesPerTest,
    OneSidedItem OneSided,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ConfirmatoryItem? CorrectedForConfirmatoryTest,
    ImmutableArray<string> Remarks);

/// <summary>One row of the labelled 2x2 with what was not verified.</summary>
internal sealed record VerifiedRow(long ConfirmatoryPositive, long ConfirmatoryNegative, long Verified, long Unverified, long All)
{
    /// <summary>The screen-positives, by what the confirmatory test said.</summary>
    public static VerifiedRow OfPositives(VerificationCounts counts) => Of(counts.Confirmed, counts.Refuted, counts.Positives);

    /// <summary>The screen-negatives, by what the confirmatory test said.</summary>
    public static VerifiedRow OfNegatives(VerificationCounts counts) => Of(counts.Missed, counts.Agreed, counts.Negatives);

    private static VerifiedRow Of(long positive, long negative, long all) => new(positive, negative, positive + negative, all - positive - negative, all);
}

/// <summary>What <c>lower</c> and <c>upper</c> are.</summary>
internal sealed record AccuracyMethods(string Naive, string Corrected, string Bounds);

/// <summary>One figure: of the verified alone, corrected, and with no assumption on the unverified.</summary>
internal sealed record AccuracyItem(NaiveItem Naive, CorrectedItem Corrected, LimitsItem Bounds);

/// <summary>A figure of the verified alone.</summary>
internal sealed record NaiveItem(
    Figure Estimate, Figure StandardError, Figure Lower, Figure Upper, Figure WaldLower, Figure WaldUpper, Figure LogitLower, Figure LogitUpper);

/// <summary>A corrected figure; the limits are logit ones.</summary>
internal sealed record CorrectedItem(
    Figure Estimate, Figure StandardError, Figure Lower, Figure Upper, Figure WaldLower, Figure WaldUpper,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? RecoveredLower,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? RecoveredUpper);

/// <summary>Two limits.</summary>
internal sealed record LimitsItem(Figure Lower, Figure Upper);

/// <summary>A figure between two bounds.</summary>
internal sealed record BoundedItem(Figure Estimate, Figure Lower, Figure Upper);

/// <summary>The covariance of two corrected figures.</summary>
internal sealed record CovarianceItem(string First, string Second, Figure Covariance);

/// <summary>The 2x2 against the condition, all runs as they would be if verified like the rest; real numbers.</summary>
internal sealed record CompletedTable(Figure TruePositives, Figure FalsePositives, Figure FalseNegatives, Figure TrueNegatives);

/// <summary>Lower limits that hold whatever was not verified, and from the positivity alone.</summary>
internal sealed record OneSidedItem(double Confidence, Figure SensitivityAtLeast, Figure SpecificityAtLeast, Figure SpecificityFromPositivity, Figure SpecificityFromPositivityAtLeast);

/// <summary>Predictive values corrected for the stated accuracy of the confirmatory test.</summary>
internal sealed record ConfirmatoryItem(Figure Sensitivity, Figure Specificity, ConfirmedItem PositivePredictiveValue, ConfirmedItem NegativePredictiveValue);

/// <summary>One of them; unclipped it can lie outside 0 to 1.</summary>
internal sealed record ConfirmedItem(Figure Estimate, Figure Unclipped, Figure StandardError, Figure Lower, Figure Upper);
