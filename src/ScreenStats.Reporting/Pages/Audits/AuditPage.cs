using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Audits;

/// <summary>What audited negative runs say.</summary>
internal static class AuditPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "audits", "What audits of negatives say", findings.Audits,
        "Without audits the false negatives cannot be seen, and no sensitivity can be given: a positive specimen some days after a negative run is no audit of it.",
        "A specimen taken as an audit verifies the latest negative run of the same person within the hours that the program file allows. The share is of the audited runs alone; " +
        "what it means for all negative runs stands with the accuracy of the screen.")
    {
        Tables = [TableViews.Whole(findings.Audits.Table.Only(row => row.Grouping != Grouping.Operator))],
        Caution = "That few or none were missed among those audited does not clear a negative screen: whoever has symptoms stays away and is tested as local rules say, whatever the screen showed.",
    };
}
