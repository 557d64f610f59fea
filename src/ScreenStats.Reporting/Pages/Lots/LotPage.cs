using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Lots;

/// <summary>Which lots stand out.</summary>
internal static class LotPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "lots", "Which lots stand out", findings.Lots,
        "A lot without a flag is not proved good: with few runs nothing short of a disaster can stand out.",
        "For each lot the exact one-sided chance of at least its refuted positives, given all refuted positives, all valid tests and its own " +
        "(hypergeometric), and likewise for unusable runs. Step down: p-values are adjusted for the number of lots (S. Holm, 1979, Scandinavian Journal " +
        "of Statistics 6:65); while the smallest adjusted one is below 0.01 that lot is flagged and leaves the pool with its runs, and the rest are tested afresh. " +
        "A flag needs the widened chance, within sites and with repeated runs of the same people allowed for, times the number of lots to be below 0.01 too. " +
        "Lots' refuted positives are judged first; sites' are judged without the runs of lots so flagged. Sites' unusable runs are judged first; lots' are judged without the runs of sites so flagged. Runs without a lot are shown, not tested. ")
    {
        Tables = [new TableView(findings.Lots.ToTable(), "Every lot",
        [
            "lot", "runs", "inconclusive", "invalid", "invalid_judged", "invalid_judged_runs", "invalid_p", "invalid_p_holm", "tests", "positives", "confirmed", "refuted", "refuted_judged", "refuted_judged_tests", "refuted_p", "refuted_p_holm", "flag",
        ])],
        Caution = "A flagged lot is one to look into. Each of its positives needs its own confirmatory test all the same, and nobody who stays away because of one comes back before local rules allow it.",
    };
}
