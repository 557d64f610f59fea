using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Sites;

/// <summary>Which sites stand out.</summary>
internal static class SitePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "sites", "Which sites stand out", findings.Sites,
        "A site without a flag is not proved good: with few runs nothing short of a disaster can stand out.",
        "For each site the exact one-sided chance of at least its refuted positives, given all refuted positives, all valid tests and its own " +
        "(hypergeometric), and likewise for unusable runs. Step down: p-values are adjusted for the number of sites (S. Holm, 1979, Scandinavian Journal " +
        "of Statistics 6:65); while the smallest adjusted one is below 0.01 that site is flagged and leaves the pool with its runs, and the rest are tested afresh. " +
        "A flag needs the widened chance, with repeated runs of the same people allowed for, times the number of sites to be below 0.01 too. " +
        "Sites' unusable runs are judged first; lots' refuted positives are judged first, and the sites' then without the runs of lots so flagged: a bad lot must not make its sites look bad, nor a clumsy site its lots. ")
    {
        Tables = [new TableView(findings.Sites.ToTable(), "Every site",
        [
            "site", "runs", "inconclusive", "invalid", "invalid_judged", "invalid_judged_runs", "invalid_p", "invalid_p_holm", "tests", "positives", "confirmed", "refuted", "refuted_judged", "refuted_judged_tests", "refuted_p", "refuted_p_holm", "flag",
        ])],
        Caution = "A flag asks how runs are done at a site, not who is to blame. It decides nothing about a person: each positive there needs its own confirmatory test, and whom to release is for local rules.",
    };
}
