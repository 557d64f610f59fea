using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Delays;

/// <summary>The table of waiting times.</summary>
internal static class DelayTables
{
    public static Table<DelayFinding> Table(ImmutableArray<DelayFinding> rows) => new(
        "delays",
        "Hours from run to specimen and from specimen to report",
        "Median and 90th percentile (nearest rank) of the known waiting times. Values known to whole days only are whole days times 24 hours; "
        + "specimens without a recorded report are counted as unresulted and would lengthen the times from specimen to report.",
        [
            new("kind", "Waiting time", Unit.Text, "From a followed-up run to the specimen that settled it, or from a specimen to its report.", row => Cell.Text(LevelNames.Of(row.Kind))),
            LevelColumns.By<DelayFinding>(row => row.Grouping),
            LevelColumns.Level<DelayFinding>(row => row.Level),
            new("resulted", "Known", Unit.Count, "Waiting times that are known.", row => Cell.Count(row.Resulted)),
            new("unresulted", "Unresulted", Unit.Count, "Specimens without a recorded report.", row => Cell.Count(row.Unresulted)),
            new("whole_days", "Whole days only", Unit.Count, "Of the known ones, those known to whole days only.", row => Cell.Count(row.WholeDays)),
            new("median_hours", "Median", Unit.Hours, "Median of the known waiting times, in hours.", row => Cell.NumberOr(row.MedianHours, row.MedianHoursUndefined ?? "")) { Method = Methods.MethodNames.NearestRank },
            new("percentile_90_hours", "90th percentile", Unit.Hours, "90th percentile (nearest rank) of the known waiting times, in hours.", row => Cell.NumberOr(row.Percentile90Hours, row.MedianHoursUndefined ?? "")) { Method = Methods.MethodNames.NearestRank },
        ],
        rows);
}
