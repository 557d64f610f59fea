using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Flow;

/// <summary>The table of the flow.</summary>
internal static class FlowTables
{
    public static Table<FlowRow> Table(ImmutableArray<FlowRow> rows) => new(
        "flow",
        "Flow of rows, runs and confirmatory tests",
        "Each row is a box of the flow diagram: how many there are, from which box they come, and their share of it. Boxes that come from the same one add up to it. "
        + "Limits stand where the share says something of more than these rows: outcomes of runs, and results among runs with a confirmatory test. What became of rows, and who was tested, are decisions and work done, no sample.",
        [
            new("box", "Box", Unit.Text, "Name of the box, its origin before it.", row => Cell.Text(row.Key)),
            new("stage", "Stage", Unit.Text, "Where in the flow it stands.", row => Cell.Text(row.Stage)),
            new("outcome", "What became of them", Unit.Text, "What became of them.", row => Cell.Text(row.Outcome)),
            new("from", "From", Unit.Text, "The box that they come from; empty where something begins.", row => row.ComesFrom.Length == 0 ? Cell.Empty : Cell.Text(row.ComesFrom)),
            new("count", "Count", Unit.Count, "Number of rows, runs or specimens.", row => Cell.Count(row.Count)),
            new("share", "Share", Unit.Proportion, "Share of the box that they come from.", row => row.Share is { } share ? Cell.Number(share) : Cell.Empty) { Method = MethodNames.Share },
            .. ShareColumns.For<FlowRow>(row => row.Proportion!).Where(column => column.Name != "estimate")
                .Select(column => column with { Value = row => row.Proportion is null ? Cell.Empty : column.Value(row) }),
        ],
        rows);
}
