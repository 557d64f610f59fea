using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Conduct;

/// <summary>How runs were carried out.</summary>
internal static class ConductPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "conduct", "How runs were carried out", findings.Conduct,
        "Only what the exports record can be found: a run read too early with no reading time leaves no trace.",
        "Runs with an expired lot, read outside the window of the device, beyond the number that a kit holds, or on a person within the isolation period " +
        "after a confirmatory positive. Such runs are counted in all figures and shown here. Shares are of the runs of which it could be told, with " +
        "Wilson's limits, widened for sites and site-weeks. Sites are compared with all others, lots and operators with the others of the same site, by an exact test adjusted for the number compared " +
        "(Holm): one family for each measure and breakdown. Figures by operator stand only in the files: they are for training, not for discipline.")
    {
        Tables =
        [
            TableViews.Whole(findings.Conduct.ConductTable.Only(row => row.Grouping == Grouping.Program)),
            Rates(findings, Grouping.Program, "Conduct as shares of the runs of which it could be told"),
            Rates(findings, Grouping.Site, "Conduct by site, against the other sites, where anything was found", ViewColumn.Level("Site")),
            Rates(findings, Grouping.Lot, "Conduct by lot, against the other lots of the same sites, where anything was found", ViewColumn.Level("Lot")),
            new TableView(findings.Conduct.ContrastTable.Only(row => row.Adjustment == "site-week"), "Ways of taking the specimen, within site-weeks that used both",
                ["measure", "first", "second", "strata", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
        ],
        Caution = "A run that was carried out wrongly can be wrong either way: a negative one clears nobody, and a positive one needs its confirmatory test. What is found here is for training, not for discipline.",
    };

    private static TableView Rates(Findings findings, Grouping grouping, string caption, params ViewColumn[] level) => new(
        findings.Conduct.RateTable.Only(row => row.Grouping == grouping && (grouping == Grouping.Program || row.Share.Events > 0) && (grouping != Grouping.Lot || row.Comparison is not null)), caption,
        ["measure", .. level, "events", "trials", "estimate", ViewColumn.Limits, .. grouping == Grouping.Program ? Array.Empty<ViewColumn>() : ["expected_events", "p_holm"], ViewColumn.Remark]);
}
