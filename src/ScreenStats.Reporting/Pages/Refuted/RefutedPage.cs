using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Refuted;

/// <summary>Refuted positives of valid tests.</summary>
internal static class RefutedPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "refuted", "How often a test was refuted", findings.Refuted,
        "Positives that were never followed up may be false too: the bound takes all of them as refuted.",
        "Positive runs that the confirmatory test did not confirm, per 1,000 valid tests. Limits are Wilson's, widened for the same people, sites and weeks.")
    {
        Charts = RefutedFigures.Of(findings),
        Tables = [TableViews.Whole(findings.Refuted.Table.Only(row => row.Grouping is Grouping.Program or Grouping.Lot or Grouping.Site))],
        Caution = "Refuted is what the confirmatory test said, and that can be wrong: a specimen taken late or badly may miss a true infection. Whether a person is released is for licensed practitioners under local rules.",
    };
}
