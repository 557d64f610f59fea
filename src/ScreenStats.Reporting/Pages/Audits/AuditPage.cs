using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Audits;

/// <summary>What audited negative runs say.</summary>
internal static class AuditPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "audits", "What audits of negatives say", findings.Audits,
        "Without audits the false negatives cannot be seen, and no sensitivity can be given: a positive specimen some days after a negative run is no audit of it.",
        "A specimen taken as an audit verifies the latest negative run of the same person within the hours that the program file allows. Sensitivity and specificity are " +
        "corrected for verifying only some of the negatives (C. B. Begg and R. A. Greenes, 1983, Biometrics 39:207), and undefined without audited negatives.")
    {
        Tables = [TableViews.Whole(findings.Audits.Table.Only(row => row.Grouping != Grouping.Operator))],
    };
}
