using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.FollowThrough;

/// <summary>The table of follow-up.</summary>
internal static class FollowUpTables
{
    public static Table<FollowUpFinding> Table(ImmutableArray<FollowUpFinding> rows) => new(
        "follow-up",
        "Follow-up of positive and inconclusive runs by a confirmatory test",
        "Due are the runs that called for a confirmatory test; confirmed, refuted, unresolved, pending and unverified add up to them. "
        + "The estimate is the share with a conclusive result (confirmed or refuted) of those due. Parts without a run due are left out. "
        + "Rows by operator are for training, not for discipline.",
        [
            LevelColumns.By<FollowUpFinding>(row => row.Grouping),
            LevelColumns.Level<FollowUpFinding>(row => row.Level),
            new("outcome", "Outcome", Unit.Text, "Positive or inconclusive.", row => Cell.Text(LevelNames.Of(row.Outcome))),
            new("due", "Due", Unit.Count, "Runs that called for a confirmatory test.", row => Cell.Count(row.Due)),
            new("confirmed", "Confirmed", Unit.Count, "Runs whose confirmatory test was positive.", row => Cell.Count(row.Confirmed)),
            new("refuted", "Refuted", Unit.Count, "Runs whose confirmatory test was negative.", row => Cell.Count(row.Refuted)),
            new("unresolved", "Unresolved", Unit.Count, "Runs with an indeterminate or rejected specimen only.", row => Cell.Count(row.Unresolved)),
            new("pending", "Pending", Unit.Count, "Runs without a specimen for which one may still be reported.", row => Cell.Count(row.Pending)),
            new("unverified", "Unverified", Unit.Count, "Runs without a specimen for which none is to be expected any more.", row => Cell.Count(row.Unverified)),
            .. ShareColumns.For<FollowUpFinding>(row => row.FollowThrough),
        ],
        rows);
}
