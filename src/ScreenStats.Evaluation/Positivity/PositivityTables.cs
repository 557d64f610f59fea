using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Positivity;

internal static class PositivityTables
{
    public static Table<PositivityRow> Positivity(ImmutableArray<PositivityRow> rows) => new(
        "positivity",
        "Positivity",
        "Positive tests among valid tests (negative and positive ones), for the program and its parts. Limits are Wilson's; the widened " +
        "limits allow for the same people, sites and weeks being counted again and again, and lead.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The part; empty for the whole program, (none) where nothing is recorded.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("period_start", "Period from", Unit.Date, "First day of the period; empty for the whole span. Weeks start on Monday.", row => Cell.Date(row.PeriodStart)),
            new("tests", "Valid tests", Unit.Count, "Negative and positive runs.", row => Cell.Count(row.Tests)),
            new("positives", "Positive", Unit.Count, "Positive runs.", row => Cell.Count(row.Positives)),
            .. ShareColumns.For<PositivityRow>(row => row.Share),
        ],
        rows);
}
