using ScreenStats.Evaluation;
using ScreenStats.Evaluation.LotTests;

namespace ScreenStats.Reporting.Pages.LotTests;

/// <summary>Lots within sites and weeks, and sites within lots and weeks.</summary>
internal static class PlaceTestPages
{
    private const string Method =
        " For each measure: exact one-sided test, given each stratum's events, by convolution; adjusted for the number compared (S. Holm, 1979), stepping down at 0.01. " +
        "The ratio has exact limits that also hold the variance between strata, or of people where that is larger; an excess is material from a lower limit of 1.5 on. " +
        "Expected refuted positives follow runs weighted by how far positives were followed up. The rate drawn together comes from a beta-binomial distribution over all of them.";

    /// <summary>Lots.</summary>
    public static Page Lots(Findings findings) => new(
        "lot-tests", "Lots within sites and weeks", findings.LotTests,
        "A lot that was always used alone at its sites cannot be compared with any other. Fewer cases may also mean that fewer infected people were tested with the lot: people are not drawn for lots at random.",
        "Each lot is compared with the other lots of the same site and ISO week." + Method + " Too few cases, or failed positive control swabs, are marked as low yield: a lot that misses infected people does harm unseen.")
    {
        Caution = "A mark on a lot does not say that its positives were false, nor that anybody may return to work.",
        Tables = [View(findings.LotTests, "lot", "refuted", "Refuted positives"), View(findings.LotTests, "lot", "invalid", "Inconclusive and invalid runs"), View(findings.LotTests, "lot", "cases", "Cases found"), View(findings.LotTests, "lot", "failed-controls", "Failed positive control swabs")],
    };

    /// <summary>Sites.</summary>
    public static Page Sites(Findings findings) => new(
        "site-tests", "Sites within lots and weeks", findings.SiteTests,
        "Whether a site's people, staff or surroundings differ. A lot that was used at one site only says nothing of that site.",
        "Each site is compared with the other sites that used the same lot in the same ISO week." + Method + " Sites are not compared by cases: infections differ between sites.")
    {
        Caution = "A mark on a site is a reason to watch how runs are done there. It makes no positive false and no negative safe, and it names nobody.",
        Tables = [View(findings.SiteTests, "site", "refuted", "Refuted positives"), View(findings.SiteTests, "site", "invalid", "Inconclusive and invalid runs")],
    };

    private static TableView View(PlaceTestFindings findings, string by, string measure, string caption) => new(
        findings.Table.Only(row => row.Measure == measure && row.Strata > 0), $"{caption} by {by}",
        [
            by, "strata", "observed", "expected", "ratio", new ViewColumn("lower", "Limits", "upper"), "p", "p_holm",
            .. measure is "refuted" or "invalid" ? (ReadOnlySpan<ViewColumn>)["material", "rate", new ViewColumn("rate_lower", "Rate, limits", "rate_upper"), "chance_above_twice"] : ["low_yield"],
        ]);
}
