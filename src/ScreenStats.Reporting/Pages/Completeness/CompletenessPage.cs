using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Completeness;

/// <summary>How much of each column is recorded.</summary>
internal static class CompletenessPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "completeness", "How much is recorded", findings.Completeness,
        "A recorded value may still be wrong. A blank is not recorded; it never counts as no.",
        "Share of the rows of an export, without those set aside and duplicates, in which the column holds a value that could be read.")
    {
        Tables = [.. findings.Completeness.Tables.Select(table => new TableView(table, table.Title, [.. table.Columns.Select(column => new ViewColumn(column.Name))]))],
    };
}
