using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Coverage;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages.Coverage;

/// <summary>People tested among people eligible.</summary>
internal static class CoveragePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "coverage", "How many of the eligible were tested", findings.Coverage,
        "A headcount is as good as the list it was taken from; people who work at several sites may be counted at each.",
        "People with at least one counted run in an ISO week at a site, divided by the people eligible there that week, over the weeks with a headcount. Week by week it stands in tables/coverage.csv.")
    {
        Tables = [.. findings.Coverage.Tables.OfType<Table<CoverageRow>>().Select(table => TableViews.Whole(table.Only(row => row.Week is null)))],
    };
}
