using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Specimens;

/// <summary>Confirmatory specimens by why they were taken.</summary>
internal static class SpecimenPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "specimens", "What confirmatory specimens showed, by why they were taken", findings.Specimens,
        "How many were infected: each reason picks its own people. A follow-up specimen may settle several runs, and one that was taken too early or too late settles none.",
        "Every counted specimen by its recorded reason. Share: positive of positive and negative ones, Wilson's limits, widened for people with several specimens of the same reason.")
    {
        Tables =
        [
            new TableView(findings.Specimens.Table, "Confirmatory specimens by reason",
                ["reason", "specimens", "persons", "positive", "negative", "indeterminate", "rejected", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
        ],
        Caution = "These shares show who was sent for a specimen and why, not how good a test is. What one result means for a person is for the practitioner who ordered it.",
    };
}
