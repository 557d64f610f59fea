using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Yield;

/// <summary>Screening done for each case found.</summary>
internal static class YieldPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "yield", "How much screening for each case", findings.Yield,
        "A case found is not a case prevented. What a case found early is worth, and what a test costs, are not in the exports.",
        "Runs, people and valid tests divided by what they found; limits are those of the proportion turned over. A case is a person's first confirmed run of an episode. By site the limits are widened only by how the site's own weeks differ.")
    {
        Charts = YieldFigures.Of(findings),
        Tables = [.. findings.Yield.Tables.Select(TableViews.Whole)],
        Caution = "Many runs for each case may mean little infection, or much that was missed: by itself it is no ground to stop screening or to leave a positive unconfirmed.",
    };
}
