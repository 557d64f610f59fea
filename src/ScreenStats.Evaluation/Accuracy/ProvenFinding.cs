using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>What the positivity alone proves of the specificity, and whether it refutes what is claimed.</summary>
/// <param name="Key">The device; <c>(program)</c> for all valid tests together.</param>
/// <param name="Device">Name of the device; empty for all valid tests together.</param>
/// <param name="ValidTests">Valid tests.</param>
/// <param name="Positives">Positive ones.</param>
/// <param name="SpecificityLower">The average specificity is at least this, as far as it is no worse than chance; null without valid tests.</param>
/// <param name="SpecificityLowerUndefined">Why there is no limit; null where there is one.</param>
/// <param name="Confidence">Confidence of the limit, one-sided.</param>
/// <param name="DesignEffect">The design effect by which the limit is widened.</param>
/// <param name="StatedSpecificity">What is stated of the device; null where nothing is.</param>
/// <param name="StatedUpper">The upper limit of what is stated; the value where it is taken as exact.</param>
/// <param name="Claim">Whether the data refute what is stated.</param>
public sealed record ProvenFinding(
    string Key, string Device, long ValidTests, long Positives, double? SpecificityLower, string? SpecificityLowerUndefined, double Confidence, double DesignEffect,
    double? StatedSpecificity, double? StatedUpper, ClaimOutcome Claim);
