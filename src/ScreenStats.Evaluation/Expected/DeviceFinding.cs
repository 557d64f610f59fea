using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Expected;

/// <summary>One screening device: what is stated of it against what was seen.</summary>
/// <param name="Device">Its name in the program file.</param>
/// <param name="Source">Where its accuracy is stated.</param>
/// <param name="Lots">Its lots in these data, in order.</param>
/// <param name="StatedSensitivity">Stated sensitivity; null where not stated.</param>
/// <param name="StatedSpecificity">Stated specificity; null where not stated.</param>
/// <param name="ValidTests">Valid tests of its lots.</param>
/// <param name="Positives">Positive runs of its lots.</param>
/// <param name="Confirmed">Confirmed ones.</param>
/// <param name="Refuted">Refuted ones.</param>
/// <param name="WithoutConclusion">Positive runs without a conclusion.</param>
/// <param name="RefutedRate">Refuted per valid test: the observed side of the comparison.</param>
/// <param name="RefutedRateBoundUpper">Refuted per valid test if every positive run without a conclusion were refuted; null without valid tests.</param>
/// <param name="StatedFalsePositiveRate">1 - stated specificity; null where not stated.</param>
/// <param name="StatedFalsePositiveRateLower">Its lower limit.</param>
/// <param name="StatedFalsePositiveRateUpper">Its upper limit.</param>
/// <param name="Compatibility">The outcome of the comparison.</param>
/// <param name="Explanation">The outcome in a sentence's half, with its reason.</param>
/// <param name="PositivityBelowStatedRate">Whether fewer tests were positive than the stated specificity alone would give.</param>
/// <param name="CorrectedPrevalence">Prevalence behind the positivity by the stated accuracy; cannot judge that accuracy.</param>
/// <param name="ExpectedPositivePredictiveValue">At exactly the external prevalence; undefined where none is stated.</param>
/// <param name="ExpectedPositivePredictiveValueWithPrevalence">The same, its limits with the prevalence's own uncertainty.</param>
/// <param name="ExpectedNegativePredictiveValue">At exactly the external prevalence; undefined where none is stated.</param>
/// <param name="ExpectedNegativePredictiveValueWithPrevalence">The same, its limits with the prevalence's own uncertainty.</param>
/// <param name="Curve">Expected predictive values over prevalence; empty where sensitivity or specificity is not stated.</param>
/// <param name="Places">Where this program stands on the curve.</param>
public sealed record DeviceFinding(
    string Device, string Source, ImmutableArray<string> Lots, StatedFigure? StatedSensitivity, StatedFigure? StatedSpecificity,
    long ValidTests, long Positives, long Confirmed, long Refuted, long WithoutConclusion,
    ProportionFinding RefutedRate, double? RefutedRateBoundUpper,
    double? StatedFalsePositiveRate, double? StatedFalsePositiveRateLower, double? StatedFalsePositiveRateUpper,
    Compatibility Compatibility, string Explanation, bool PositivityBelowStatedRate, EstimateFinding CorrectedPrevalence,
    EstimateFinding ExpectedPositivePredictiveValue, EstimateFinding ExpectedPositivePredictiveValueWithPrevalence,
    EstimateFinding ExpectedNegativePredictiveValue, EstimateFinding ExpectedNegativePredictiveValueWithPrevalence,
    ImmutableArray<CurvePoint> Curve, ImmutableArray<ProgramPlace> Places);
