using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.InvalidRuns;

/// <summary>Runs that could not be used.</summary>
internal static class InvalidRunPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "invalid-runs", "How many runs could not be used", findings.InvalidRuns,
        "A high share says that runs fail, not why: device, storage, swab, technique and reading look alike here.",
        "Inconclusive runs (a test line without a control line) and invalid runs (no line at all) divided by all runs; both parts stand beside the sum. " +
        "Limits are Wilson's, widened as for positivity. Figures by operator stand only in the files: they are for training, not for discipline.")
    {
        Charts = InvalidRunFigures.Of(findings),
        Tables =
        [
            new TableView(findings.InvalidRuns.By(Grouping.Site), "Unusable runs by site", [ViewColumn.Level("Site"), "runs", "inconclusive", "invalid", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            new TableView(findings.InvalidRuns.By(Grouping.Lot), "Unusable runs by lot", [ViewColumn.Level("Lot"), "runs", "inconclusive", "invalid", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            new TableView(findings.InvalidRuns.By(Grouping.Period), "Unusable runs by period", ["period_start", "runs", "inconclusive", "invalid", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
        ],
        Caution = "A run without a valid result is no negative: the person is still untested, and local rules say what follows.",
    };
}
