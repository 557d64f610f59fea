using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>The prevalence behind the positivity of one part of the program.</summary>
/// <param name="Key">What tells the part from the others of its list.</param>
/// <param name="By">How the program is divided: <c>program</c>, <c>site</c> or <c>device</c>.</param>
/// <param name="Level">The part; empty for the whole program.</param>
/// <param name="PeriodStart">First day of the period; null for the whole span.</param>
/// <param name="Apparent">Positives among valid tests of devices whose accuracy is stated.</param>
/// <param name="TestsWithoutAccuracy">Valid tests of devices whose sensitivity or specificity is not stated: left out.</param>
/// <param name="Devices">The devices whose tests are in it.</param>
/// <param name="Sensitivity">Their stated sensitivities, weighted by their valid tests; null without any.</param>
/// <param name="Specificity">Their stated specificities, weighted likewise; null without any.</param>
/// <param name="BelowFalsePositiveRate">Fewer positives than 1 - specificity alone would give, so that the estimate is 0.</param>
/// <param name="AboveSensitivity">More positives than the sensitivity can give, so that the estimate is 1.</param>
/// <param name="Estimates">The true prevalence by each method, the one that leads first.</param>
/// <param name="Remark">What must be known of it; empty for nothing.</param>
public sealed record TruePrevalenceFinding(
    string Key, string By, string Level, DateOnly? PeriodStart, ProportionFinding Apparent, long TestsWithoutAccuracy,
    ImmutableArray<string> Devices, double? Sensitivity, double? Specificity, bool BelowFalsePositiveRate, bool AboveSensitivity,
    ImmutableArray<PrevalenceEstimate> Estimates, string Remark)
{
    /// <summary>Confirmed positive runs among these tests.</summary>
    public long Confirmed { get; init; }

    /// <summary>Confirmed positive runs per valid test; null without any test.</summary>
    public double? ConfirmedShare => Apparent.Trials == 0 ? null : (double)Confirmed / Apparent.Trials;

    /// <summary>The estimate that leads lies below the share confirmed: the stated specificity is too low for these data.</summary>
    public bool BelowConfirmed => Lead.Estimate < ConfirmedShare;

    /// <summary>The estimate by the method that leads.</summary>
    [JsonIgnore]
    public PrevalenceEstimate Lead => Estimates[0];
}
