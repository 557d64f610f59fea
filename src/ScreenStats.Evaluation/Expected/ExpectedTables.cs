using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Expected;

/// <summary>The tables of expected against observed.</summary>
internal static class ExpectedTables
{
    private const string NoSpecificity = "no specificity is stated for this device";

    public static Table<DeviceFinding> Table(ImmutableArray<DeviceFinding> rows) => new(
        "expected-against-observed",
        "Stated specificity against refuted positives, by device",
        "Refuted positives per valid test of a device's lots, with every positive run without a conclusion taken as not refuted and as "
        + "refuted, against 1 - stated specificity. The corrected prevalence is computed from the device's own stated accuracy and cannot judge it.",
        [
            new("device", "Device", Unit.Text, "Name of the device in the program file.", row => Cell.Text(row.Device)),
            new("stated_specificity", "Stated specificity", Unit.Proportion, "Specificity as stated.", row => Cell.NumberOr(row.StatedSpecificity?.Value, NoSpecificity)) { Method = Methods.MethodNames.Stated },
            new("stated_false_positive_rate", "1 - stated specificity", Unit.Proportion, "False positives per uninfected person tested, as stated.", row => Cell.NumberOr(row.StatedFalsePositiveRate, NoSpecificity)) { Method = Methods.MethodNames.Stated },
            new("stated_lower", "Lower limit", Unit.Proportion, "Lower limit of 1 - stated specificity.", row => Cell.NumberOr(row.StatedFalsePositiveRateLower, NoSpecificity)) { Method = Methods.MethodNames.Stated },
            new("stated_upper", "Upper limit", Unit.Proportion, "Upper limit of 1 - stated specificity.", row => Cell.NumberOr(row.StatedFalsePositiveRateUpper, NoSpecificity)) { Method = Methods.MethodNames.Stated },
            new("tests", "Valid tests", Unit.Count, "Valid tests of the device's lots.", row => Cell.Count(row.ValidTests)),
            new("positives", "Positives", Unit.Count, "Positive runs.", row => Cell.Count(row.Positives)),
            new("confirmed", "Confirmed", Unit.Count, "Confirmed positive runs.", row => Cell.Count(row.Confirmed)),
            new("refuted", "Refuted", Unit.Count, "Refuted positive runs.", row => Cell.Count(row.Refuted)),
            new("without_conclusion", "Without conclusion", Unit.Count, "Positive runs without a conclusive confirmatory result.", row => Cell.Count(row.WithoutConclusion)),
            .. ShareColumns.For<DeviceFinding>(row => row.RefutedRate),
            new("bound_upper", "Upper bound", Unit.Proportion, "The same if every positive run without a conclusion were refuted.", row => Cell.NumberOr(row.RefutedRateBoundUpper, "there are no valid tests")) { Method = Methods.MethodNames.Bounds },
            new("outcome", "Outcome", Unit.Text, "Compatible, not compatible, cannot tell, or not judged.", row => Cell.Text(LevelNames.Of(row.Compatibility))),
            new("corrected_prevalence", "Corrected prevalence", Unit.Proportion, "Prevalence behind the positivity by the device's stated accuracy.", row => Number(row.CorrectedPrevalence, row.CorrectedPrevalence.Estimate)) { Method = Statistics.Prevalence.RoganGladen.MethodName },
            new("corrected_lower", "Lower limit", Unit.Proportion, "Its lower limit, widened because tests come in clusters.", row => Number(row.CorrectedPrevalence, row.CorrectedPrevalence.Lower)) { Method = Statistics.Prevalence.RoganGladen.MethodName },
            new("corrected_upper", "Upper limit", Unit.Proportion, "Its upper limit, widened because tests come in clusters.", row => Number(row.CorrectedPrevalence, row.CorrectedPrevalence.Upper)) { Method = Statistics.Prevalence.RoganGladen.MethodName },
        ],
        rows);

    public static Table<CurveRow> Curve(ImmutableArray<CurveRow> rows) => new(
        "predictive-value-curve",
        "Expected predictive values over prevalence",
        "What the stated accuracy of each device makes of a positive and of a negative run at each prevalence, with logit limits.",
        [
            new("device", "Device", Unit.Text, "Name of the device in the program file.", row => Cell.Text(row.Device)),
            new("prevalence", "Prevalence", Unit.Proportion, "Share of infected people among those tested.", row => Cell.Number(row.Point.Prevalence)) { Method = Methods.MethodNames.Grid },
            new("positive_predictive_value", "Positive predictive value", Unit.Proportion, "Expected positive predictive value.", row => Value(row.Point.Positive, "positive")) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("positive_lower", "Lower limit", Unit.Proportion, "Its lower limit.", row => Value(row.Point.PositiveLower, "positive")) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("positive_upper", "Upper limit", Unit.Proportion, "Its upper limit.", row => Value(row.Point.PositiveUpper, "positive")) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("negative_predictive_value", "Negative predictive value", Unit.Proportion, "Expected negative predictive value.", row => Value(row.Point.Negative, "negative")) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("negative_lower", "Lower limit", Unit.Proportion, "Its lower limit.", row => Value(row.Point.NegativeLower, "negative")) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("negative_upper", "Upper limit", Unit.Proportion, "Its upper limit.", row => Value(row.Point.NegativeUpper, "negative")) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
        ],
        rows);

    private static Cell Number(EstimateFinding finding, double? value) => Cell.NumberOr(value, finding.EstimateUndefined ?? "every input was taken as exact");

    private static Cell Value(double? value, string result) => Cell.NumberOr(value, $"with these figures no {result} result can occur");
}
