using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Retests;

/// <summary>Whether a second run on the same day agreed with a positive one.</summary>
internal static class RetestPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "retests", "Did a second run on the same day agree", findings.Retests,
        "Whether the first or the second run was right. A retest of the same person by the same kind of device is no independent witness, and people who are retested are not chosen at random.",
        "A person's first positive run of a local day and the next valid run of that day, unless a specimen was collected in between; person-days with a run of which only the date is known are left out, since their order is " +
        "not known. Share: positive of positive and negative retests, Wilson's limits, widened for sites and site-weeks.")
    {
        Caution = "A negative retest does not cancel a positive run: a positive one needs a confirmatory test, and local rules say what holds until then.",
        Tables =
        [
            new TableView(findings.Retests.Table.Only(row => row.Pairs > 0), "Retests on the same day",
            [
                ViewColumn.Part, "retest_device", "positives", "pairs", "unusable", "concordant", "discordant", "estimate", ViewColumn.Limits,
                "concordant_confirmed", "concordant_refuted", "discordant_confirmed", "discordant_refuted", ViewColumn.Remark,
            ]),
        ],
    };
}
