using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Kits;

/// <summary>The screening devices side by side.</summary>
internal static class KitPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "kits", "Do the devices differ", findings.Kits,
        "Which device is better: nobody drew lots for who was tested with which: people, sites, weeks and lots differ too. A difference within the same sites and weeks leaves out what those differ by, not what people and lots differ by.",
        "Plain difference: first minus second device with Newcombe's hybrid of Wilson's limits, each widened by the device's own design effect. Within site-weeks: weights of Mantel and Haenszel over the site-weeks " +
        "that used both, variance by Sato, widened for people. A device's lots are those that the program file gives it.")
    {
        Tables =
        [
            new TableView(findings.Kits.Table, "Each device", ["device", "measure", "events", "trials", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            View(findings, "Plain differences, first minus second", "none"),
            View(findings, "Plain differences without the runs of flagged lots", "none-without-flagged-lots"),
            View(findings, "Differences within site-weeks that used both", "site-week", "strata"),
            View(findings, "Differences within site-weeks, without the runs of flagged lots", "site-week-without-flagged-lots", "strata"),
        ],
        Caution = "A device that does worse is a matter for its supplier and for those who answer for the program. What it said of a person stands until a confirmatory test, and no difference here releases anybody.",
    };

    private static TableView View(Findings findings, string caption, string adjustment, params ViewColumn[] more) => new(
        findings.Kits.ContrastTable.Only(row => row.Adjustment == adjustment), caption,
        ["measure", "first", "second", .. more, "estimate", ViewColumn.Limits, ViewColumn.Remark]);
}
