using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Participation;

internal static class ParticipationTables
{
    public static Table<ParticipationRow> Participation(ImmutableArray<ParticipationRow> rows) => new(
        "participation",
        "Participation",
        "How many people had how many counted runs, and how many days lay between a person's consecutive counted runs.",
        [
            new("measure", "Measure", Unit.Text, "runs-per-person or days-between-runs.", row => Cell.Text(row.Measure)),
            new("value", "Value", Unit.Count, "Runs of one person, or whole days between two runs (0 on the same day).", row => Cell.Count(row.Value)),
            new("count", "Count", Unit.Count, "People, or pairs of consecutive runs.", row => Cell.Count(row.Count)),
            new("share", "Share", Unit.Proportion, "Its share of all people, or of all pairs.", row => Cell.Number(row.Share)) { Method = Methods.MethodNames.Share },
        ],
        rows);
}
