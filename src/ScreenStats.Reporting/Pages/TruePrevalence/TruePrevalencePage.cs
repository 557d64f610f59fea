using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.TruePrevalence;

/// <summary>The prevalence behind the positivity.</summary>
internal static class TruePrevalencePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "true-prevalence", "How many of those tested were infected", findings.TruePrevalence,
        "It is as good as the stated accuracy, which comes from other people. It counts tests: who is tested more often counts more often. It cannot judge the devices: it was computed from what is stated of them.",
        "By period and by site the method that leads is shown; the file has all. Positivity corrected for the stated sensitivity and specificity, (positivity + specificity - 1)/(sensitivity + specificity - 1), held within 0 and 1. Where several devices were used, one correction " +
        "with their accuracies weighted by their valid tests in that part and period; correcting each device alone and adding would hold each small part at 0 on its own and give too much. " +
        "Limits hold the chance in the positives and the uncertainty of the stated accuracy; those shown are widened for persons, sites and site-weeks.")
    {
        Charts = TruePrevalenceFigures.Of(findings),
        Tables =
        [
            View(findings, "Prevalence behind the positivity, whole span", row => row.Part.PeriodStart is null && row.Part.By != "site", ViewColumn.Part, "method"),
            View(findings, "Prevalence behind the positivity by period", row => row.Part.PeriodStart is not null && row.Value == row.Part.Lead, "period_start"),
            View(findings, "Prevalence behind the positivity by site", row => row.Part.By == "site" && row.Value == row.Part.Lead, ViewColumn.Level("Site")),
        ],
        Caution = "An estimate of none does not say that nobody is infected, and one for many people decides about no single person.",
    };

    private static TableView View(Findings findings, string caption, Func<Evaluation.TruePrevalence.TruePrevalenceRow, bool> keep, params ViewColumn[] first) => new(
        findings.TruePrevalence.Table.Only(keep), caption, [.. first, "tests", "positives", "apparent", "estimate", ViewColumn.Limits, "sensitivity", "specificity", ViewColumn.Remark]);
}
