using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.IntervalCases;

/// <summary>Positive confirmatory specimens after a negative run.</summary>
internal static class IntervalCasePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "interval-cases", "Positive specimens after a negative run", findings.IntervalCases,
        "Such a person may have been missed by the run, or infected since. These figures cannot tell which, and are part of no accuracy. Interval cases are found only where people go for a test, so the program sensitivity is too high as far as they do not.",
        "Positive confirmatory specimens that are neither follow-up of a positive or inconclusive run nor an audit, by whole days since the latest negative run of the same person. Program sensitivity: cases found by screening, of these and the interval cases, with Wilson's limits widened for sites.")
    {
        Tables = [.. findings.IntervalCases.Tables.Select(TableViews.Whole)],
        Caution = "Whoever falls ill after a negative run is tested and advised at once as local rules say, and does not wait for the next screen.",
    };
}
