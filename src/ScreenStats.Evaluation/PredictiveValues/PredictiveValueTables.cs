using System.Collections.Immutable;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>The table of predictive values, observed and expected.</summary>
internal static class PredictiveValueTables
{
    private const string NotObserved = "an expected value is no count of this program";

    public static Table<PredictiveValueRow> Table(IEnumerable<ObservedPredictiveValue> observed, ExpectedFindings expected) => new(
        "predictive-values",
        "Predictive values",
        "Observed: confirmed, of the positive runs that were confirmed or refuted, with bounds that hold whatever the runs without a "
        + "conclusion would have shown. Expected: from the stated accuracy of a device at a prevalence from outside the program; its limits "
        + "are those at exactly that prevalence, the last two columns add the prevalence's own uncertainty.",
        [
            new("by", "By", Unit.Text, "How the program is divided.", row => Cell.Text(row.By)),
            LevelColumns.Level<PredictiveValueRow>(row => row.Level),
            new("basis", "Basis", Unit.Text, "What the value stands on.", row => Cell.Text(LevelNames.Of(row.Basis))),
            new("measure", "Measure", Unit.Text, "Which predictive value.", row => Cell.Text(LevelNames.Of(row.Measure))),
            new("estimate", "Estimate", Unit.Proportion, "The predictive value.", row => Number(row, row.Estimate)),
            new("lower", "Lower limit", Unit.Proportion, "Lower limit, not widened.", row => Limit(row, row.Lower)),
            new("upper", "Upper limit", Unit.Proportion, "Upper limit, not widened.", row => Limit(row, row.Upper)),
            new("method", "Method", Unit.Text, "Method of these limits.", row => row.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits.", row => Optional(row.Confidence)),
            new("prevalence", "Prevalence", Unit.Proportion, "The prevalence an expected value was computed at.", row => Optional(row.Prevalence)) { Method = Methods.MethodNames.Stated },
            new("prevalence_source", "Source of the prevalence", Unit.Text, "Where that prevalence comes from.", row => row.PrevalenceSource.Length == 0 ? Cell.Empty : Cell.Text(row.PrevalenceSource)),
            new("widened_lower", "Widened lower limit", Unit.Proportion, "Lower limit widened for people, sites and site-weeks.", row => Observed(row, row.WidenedLower)),
            new("widened_upper", "Widened upper limit", Unit.Proportion, "Upper limit widened for people, sites and site-weeks.", row => Observed(row, row.WidenedUpper)),
            new("design_effect", "Design effect", Unit.Ratio, "The largest design effect over people, sites and site-weeks, at least 1.", row => Optional(row.DesignEffect)) { Method = Methods.MethodNames.DesignEffect },
            new("confirmed", "Confirmed", Unit.Count, "Confirmed positive runs.", row => Count(row.Confirmed)),
            new("refuted", "Refuted", Unit.Count, "Refuted positive runs.", row => Count(row.Refuted)),
            new("without_conclusion", "Without conclusion", Unit.Count, "Positive runs that are unresolved, pending or unverified.", row => Count(row.WithoutConclusion)),
            new("bound_lower", "Lower bound", Unit.Proportion, "The value if every run without a conclusion were refuted.", row => Bound(row, row.BoundLower)) { Method = Methods.MethodNames.Bounds },
            new("bound_upper", "Upper bound", Unit.Proportion, "The value if every run without a conclusion were confirmed.", row => Bound(row, row.BoundUpper)) { Method = Methods.MethodNames.Bounds },
            new("with_prevalence_lower", "Lower limit with the prevalence's", Unit.Proportion, "Lower limit of an expected value with the prevalence's own uncertainty, where stated.", row => Optional(row.WithPrevalenceLower)) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("with_prevalence_upper", "Upper limit with the prevalence's", Unit.Proportion, "Upper limit of an expected value with the prevalence's own uncertainty, where stated.", row => Optional(row.WithPrevalenceUpper)) { Method = Statistics.Accuracy.PredictiveValue.LogitMethod },
            new("widened_method", "Method, widened", Unit.Text, "Method of the widened limits.", row => row.WidenedLower is null ? Cell.Empty : Cell.Text(Statistics.Clusters.WidenedInterval.MethodName)),
        ],
        [.. observed.Select(Of), .. expected.Devices.SelectMany(device => Of(device, expected))]);

    private static PredictiveValueRow Of(ObservedPredictiveValue observed) => new(
        LevelNames.Of(observed.Grouping), observed.Level, observed.Basis, PredictiveValueMeasure.PositivePredictiveValue,
        observed.Value.Estimate, observed.Value.EstimateUndefined, observed.Value.Lower, observed.Value.Upper, observed.Value.Method, observed.Value.Confidence,
        null, "", observed.Value.WidenedLower, observed.Value.WidenedUpper, observed.Value.DesignEffect,
        observed.Bounds.Confirmed, observed.Bounds.Refuted, observed.Bounds.WithoutConclusion, observed.Bounds.Lower, observed.Bounds.Upper, null, null);

    private static IEnumerable<PredictiveValueRow> Of(DeviceFinding device, ExpectedFindings expected)
    {
        yield return Of(device.Device, PredictiveValueMeasure.PositivePredictiveValue, expected, device.ExpectedPositivePredictiveValue, device.ExpectedPositivePredictiveValueWithPrevalence);
        yield return Of(device.Device, PredictiveValueMeasure.NegativePredictiveValue, expected, device.ExpectedNegativePredictiveValue, device.ExpectedNegativePredictiveValueWithPrevalence);
    }

    private static PredictiveValueRow Of(
        string device, PredictiveValueMeasure measure, ExpectedFindings expected, EstimateFinding value, EstimateFinding withPrevalence) => new(
        "device", device, PredictiveValueBasis.Expected, measure, value.Estimate, value.EstimateUndefined, value.Lower, value.Upper, value.Method,
        value.Confidence, expected.Prevalence, expected.PrevalenceSource, null, null, null, null, null, null, null, null, withPrevalence.Lower, withPrevalence.Upper);

    private static Cell Number(PredictiveValueRow row, double? value) => Cell.NumberOr(value, row.EstimateUndefined ?? "");

    private static Cell Limit(PredictiveValueRow row, double? value) =>
        Cell.NumberOr(value, row.EstimateUndefined ?? "every input was taken as exact, so there are no limits");

    private static Cell Observed(PredictiveValueRow row, double? value) =>
        row.Basis == PredictiveValueBasis.Expected ? Cell.Empty : Cell.NumberOr(value, row.EstimateUndefined ?? NotObserved);

    private static Cell Bound(PredictiveValueRow row, double? value) =>
        row.Basis == PredictiveValueBasis.Expected ? Cell.Empty : Cell.NumberOr(value, "there are no positive runs");

    private static Cell Optional(double? value) => value is { } some ? Cell.Number(some) : Cell.Empty;

    private static Cell Count(long? value) => value is { } some ? Cell.Count(some) : Cell.Empty;
}
