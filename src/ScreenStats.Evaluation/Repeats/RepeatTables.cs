using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Repeats;

internal static class RepeatTables
{
    public static Table<RepeatRow> Repeats(ImmutableArray<RepeatRow> rows) => new(
        "repeats",
        "Repeats",
        "Inconclusive and invalid runs that call for another run of the same person on the same day, and how many were repeated. Without times of day, a " +
        "person's day with an unusable and a usable run counts as one repeat done.",
        [
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("outcome", "Outcome", Unit.Text, "The run that calls for the repeat: inconclusive, invalid, or both together.", row => Cell.Text(row.Outcome)),
            new("due", "Due", Unit.Count, "Repeats due.", row => Cell.Count(row.Due)),
            new("done", "Done", Unit.Count, "Repeats done.", row => Cell.Count(row.Done)),
            .. ShareColumns.For<RepeatRow>(row => row.Share),
        ],
        rows);
}
