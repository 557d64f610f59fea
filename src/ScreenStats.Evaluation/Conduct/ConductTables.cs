using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Conduct;

internal static class ConductTables
{
    public static Table<ConductRow> Conduct(ImmutableArray<ConductRow> rows) => new(
        "conduct",
        "Conduct of runs",
        "Counted runs with an expired lot, read outside the device's reading window, beyond the number a kit holds, or on a person within the isolation " +
        "period after a confirmatory positive. They stay in every figure. Sites and lots are listed where something was found.",
        [
            new("finding", "Finding", Unit.Text, "What was found.", row => Cell.Text(row.Kind)),
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site or lot; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("found", "Found", Unit.Count, "Runs with the finding.", row => row.Found is { } found ? Cell.Count(found) : Cell.Undefined(row.FoundUndefined ?? "")),
            new("runs", "Runs", Unit.Count, "All counted runs of the part.", row => Cell.Count(row.Runs)),
            new("share", "Share", Unit.Proportion, "Runs with the finding divided by all counted runs of the part.", row => Cell.NumberOr(row.Share, row.FoundUndefined ?? "nothing was counted")) { Method = Methods.MethodNames.Share },
        ],
        rows);
}
