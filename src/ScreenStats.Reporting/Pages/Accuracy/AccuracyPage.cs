using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Accuracy;

/// <summary>How accurate the screen was in this program.</summary>
internal static class AccuracyPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "accuracy", "How accurate the screen was here", findings.Accuracy,
        "All of it is against the confirmatory test, which errs too. A person infected after the run, or too early to be found by either test, is in none of these figures, and neither is anybody who was not screened.",
        "Each audited negative run stands for the negative runs of its sampling stratum, and each verified positive for the positives (C. B. Begg and R. A. Greenes, 1983, Biometrics 39:207; " +
        "D. G. Horvitz and D. J. Thompson, 1952, Journal of the American Statistical Association 47:663). Variances add up squares over people, so that runs of one person count together (D. A. Binder, 1983, " +
        "International Statistical Review 51:279); limits are Wilson's on effective numbers of runs, put together side by side (G. Y. Zou and A. Donner, 2008, Statistics in Medicine 27:1693). " +
        "With fewer than 30 audited or none missed: exact one-sided limits, each person's runs as one. Bounds with no assumption: C. F. Manski, 2003, Partial Identification of Probability Distributions; " +
        "with sampling error: G. W. Imbens and C. F. Manski, 2004, Econometrica 72:1845. What the positivity proves: 1 minus its exact upper limit on counts divided by the design effect.")
    {
        Charts = AccuracyFigures.Of(findings),
        Tables =
        [
            new TableView(findings.Accuracy.Table.Only(row => row.Grouping == Grouping.Program), "Accuracy in the whole program",
                ["measure", "basis", "estimate", new ViewColumn("lower", "Limits or bounds", "upper"), "audited", "missed", ViewColumn.Remark]),
            new TableView(findings.Accuracy.Table.Only(row => row is { Grouping: Grouping.Site, Measure: "sensitivity" or "specificity" }), "Bounds by site, with no assumption",
                [ViewColumn.Level("Site"), "measure", new ViewColumn("lower", "Bounds", "upper"), new ViewColumn("with_error_lower", "With sampling error", "with_error_upper"), "audited"]),
            TableViews.Whole(findings.Accuracy.StratumTable),
            TableViews.Whole(findings.Accuracy.ProvenTable),
        ],
        Caution = "A negative screen does not rule out infection, however high the sensitivity.",
    };
}
