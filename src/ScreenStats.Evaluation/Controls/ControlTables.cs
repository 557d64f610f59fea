using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

internal static class ControlTables
{
    public static Table<ControlRow> Controls(ImmutableArray<ControlRow> rows) => new(
        "controls",
        "Control swabs",
        "Runs of control swabs: what they should show against what they showed. They are not screens and are in no other figure.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site or lot; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("expected", "Expected", Unit.Text, "What the swab should show.", row => Cell.Text(row.Expected)),
            new("runs", "Runs", Unit.Count, "All such runs.", row => Cell.Count(row.Runs)),
            new("negative", "Negative", Unit.Count, "Runs that were negative.", row => Cell.Count(row.Negative)),
            new("positive", "Positive", Unit.Count, "Runs that were positive.", row => Cell.Count(row.Positive)),
            new("inconclusive", "Inconclusive", Unit.Count, "Runs with a test line and no control line.", row => Cell.Count(row.Inconclusive)),
            new("invalid", "Invalid", Unit.Count, "Runs with neither line.", row => Cell.Count(row.Invalid)),
            new("as_expected", "As expected", Unit.Count, "Runs that showed what they should.", row => Cell.Count(row.AsExpected.Events)),
            .. ShareColumns.For<ControlRow>(row => row.AsExpected),
        ],
        rows);
}
