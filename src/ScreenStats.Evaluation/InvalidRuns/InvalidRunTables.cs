using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.InvalidRuns;

internal static class InvalidRunTables
{
    public static Table<InvalidRunRow> InvalidRuns(ImmutableArray<InvalidRunRow> rows) => new(
        "invalid-runs",
        "Inconclusive and invalid runs",
        "Runs without a control line among all runs: inconclusive (a test line was seen) and invalid (no line was seen), each beside their " +
        "sum. Limits are Wilson's of the sum; the widened limits allow for people, sites and weeks being counted again and again, and lead.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The part; empty for the whole program, (none) where nothing is recorded.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("period_start", "Period from", Unit.Date, "First day of the period; empty for the whole span. Weeks start on Monday.", row => Cell.Date(row.PeriodStart)),
            new("runs", "Runs", Unit.Count, "All counted runs.", row => Cell.Count(row.Runs)),
            new("inconclusive", "Inconclusive", Unit.Count, "Runs with a test line and no control line.", row => Cell.Count(row.Inconclusive)),
            new("invalid", "Invalid", Unit.Count, "Runs with neither line.", row => Cell.Count(row.Invalid)),
            .. ShareColumns.For<InvalidRunRow>(row => row.Share),
        ],
        rows);
}
