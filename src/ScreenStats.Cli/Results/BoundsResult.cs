using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>bounds</c> answers.</summary>
internal sealed record BoundsResult(
    VerifiedRow ScreenPositive,
    VerifiedRow ScreenNegative,
    double Confidence,
    string Method,
    RegionItem Sensitivity,
    RegionItem Specificity,
    RegionItem Prevalence,
    RegionItem PositivePredictiveValue,
    RegionItem NegativePredictiveValue,
    LimitsItem InfectedPositives,
    LimitsItem InfectedNegatives,
    ImmutableArray<CornerItem> Corners,
    ProofItem FromPositivity,
    ImmutableArray<AuditGainItem> AfterAudits,
    ImmutableArray<string> Remarks);

/// <summary>The bounds of one figure and its confidence interval.</summary>
internal sealed record RegionItem(Figure Lower, Figure Upper, Figure ConfidenceLower, Figure ConfidenceUpper, Figure CriticalValue);

/// <summary>One corner of the joint region.</summary>
internal sealed record CornerItem(
    double InfectedPositives, double InfectedNegatives, Figure Sensitivity, Figure Specificity, Figure Prevalence, Figure PositivePredictiveValue, Figure NegativePredictiveValue);

/// <summary>What the positivity alone proves of the specificity, for a screen no worse than chance; one-sided.</summary>
internal sealed record ProofItem(Figure Positivity, Figure PositivityUpper, Figure SpecificityAtLeast, Figure SpecificityLower, Figure ClaimedSpecificity, bool ClaimRefuted);

/// <summary>The bounds after more audited negatives.</summary>
internal sealed record AuditGainItem(long Audited, double Missed, LimitsItem Sensitivity, LimitsItem Specificity, LimitsItem Prevalence, LimitsItem NegativePredictiveValue);
