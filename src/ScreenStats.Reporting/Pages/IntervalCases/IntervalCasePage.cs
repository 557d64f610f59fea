using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.IntervalCases;

/// <summary>Positive confirmatory specimens after a negative run.</summary>
internal static class IntervalCasePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "interval-cases", "Positive specimens after a negative run", findings.IntervalCases,
        "Such a person may have been missed by the run, or infected since. These figures cannot tell which, and are part of no accuracy.",
        "Positive confirmatory specimens that are neither follow-up of a positive or inconclusive run nor an audit, by whole days since the latest negative run of the same person.")
    {
        Tables = [.. findings.IntervalCases.Tables.Select(TableViews.Whole)],
    };
}
