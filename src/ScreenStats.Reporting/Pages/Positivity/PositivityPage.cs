using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Positivity;

/// <summary>Positive tests among valid tests.</summary>
internal static class PositivityPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "positivity", "How many tests were positive", findings.Positivity,
        "Positivity is the share of tests, not of people, and it is not prevalence: it holds false positives and misses false negatives.",
        "Positive runs divided by valid tests (negative and positive). Limits are Wilson's (E. B. Wilson, 1927, Journal of the American Statistical " +
        "Association 22:209), widened by the largest design effect over persons, sites and site-weeks because the same people are tested again and " +
        "again; with fewer than 30 clusters Student's quantile is used, and fewer than 5 sites, or site-weeks, widen nothing: limits then speak of these. The unwidened limits stand in the file.")
    {
        Charts = PositivityFigures.Of(findings),
        Tables =
        [
            new TableView(findings.Positivity.By(Grouping.Period), "Positivity by period", ["period_start", "tests", "positives", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            new TableView(findings.Positivity.By(Grouping.Site), "Positivity by site", [ViewColumn.Level("Site"), "tests", "positives", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            new TableView(findings.Positivity.By(Grouping.Lot), "Positivity by lot", [ViewColumn.Level("Lot"), "tests", "positives", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            new TableView(findings.Positivity.By(Grouping.Specimen), "Positivity by specimen", [ViewColumn.Level("Specimen"), "tests", "positives", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
            new TableView(findings.Positivity.By(Grouping.Collection), "Positivity by who collected", [ViewColumn.Level("Collection"), "tests", "positives", "estimate", ViewColumn.Limits, ViewColumn.Remark]),
        ],
        Caution = "Low positivity is no all-clear: it may be few infections, or many that were missed. A positive needs its confirmatory test at a site with many and at one with few.",
    };
}
