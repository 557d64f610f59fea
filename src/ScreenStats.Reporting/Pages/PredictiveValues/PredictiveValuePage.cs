using ScreenStats.Evaluation;
using ScreenStats.Evaluation.PredictiveValues;

namespace ScreenStats.Reporting.Pages.PredictiveValues;

/// <summary>What a positive run was worth.</summary>
internal static class PredictiveValuePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "predictive-value", "What a positive is worth", findings.PredictiveValue,
        "It speaks of these people, sites and weeks, and of positives that were followed up. Where infection is rarer, a positive is worth less. It is the confirmatory test's word, not the truth.",
        "Confirmed divided by confirmed and refuted positive runs. Bounds: every run without a conclusive result taken as refuted, and as confirmed. " +
        "Limits are Wilson's, widened for the same people, sites and weeks. Expected values (Bayes' theorem) are at the stated accuracy and the external prevalence of the program file.")
    {
        Charts = PredictiveValueFigures.Of(findings),
        Tables =
        [
            new TableView(findings.PredictiveValue.Table.Only(row => row.By is "program" or "device"), "Predictive values of the program, and those to be expected",
            [
                ViewColumn.Part, "basis", "measure", "estimate", new("lower", "Limits", "upper"), new("widened_lower", "Limits, widened", "widened_upper"),
                new("bound_lower", "Bounds", "bound_upper"), "prevalence", "prevalence_source",
            ]),
            new TableView(findings.PredictiveValue.Table.Only(row => row.By is "lot" or "site" && row.Basis == PredictiveValueBasis.Observed), "Observed positive predictive value by lot and site",
            [
                ViewColumn.Part, "confirmed", "refuted", "without_conclusion", "estimate", ViewColumn.Limits, new("bound_lower", "Bounds", "bound_upper"),
            ]),
        ],
        Caution = "Each positive needs its own confirmatory test, whatever the share was among earlier ones.",
    };
}
