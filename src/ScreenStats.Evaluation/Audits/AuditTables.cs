using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Audits;

/// <summary>The table of audits.</summary>
internal static class AuditTables
{
    public static Table<AuditFinding> Table(ImmutableArray<AuditFinding> rows) => new(
        "audits",
        "Audits of negative runs",
        "Negative runs that were verified by an audit specimen; missed, agreed and unresolved add up to audited. The share is the negative "
        + "predictive value among those audited: agreed, of the audited runs with a conclusive result.",
        [
            LevelColumns.By<AuditFinding>(row => row.Grouping),
            LevelColumns.Level<AuditFinding>(row => row.Level),
            new("audited", "Audited", Unit.Count, "Negative runs that were verified by an audit specimen.", row => Cell.Count(row.Audited)),
            new("missed", "Missed", Unit.Count, "Audited runs whose confirmatory test was positive.", row => Cell.Count(row.Missed)),
            new("agreed", "Agreed", Unit.Count, "Audited runs whose confirmatory test was negative.", row => Cell.Count(row.Agreed)),
            new("unresolved", "Unresolved", Unit.Count, "Audited runs without a conclusive confirmatory result.", row => Cell.Count(row.Unresolved)),
            .. ShareColumns.For<AuditFinding>(row => row.NegativePredictiveValue),
        ],
        rows);
}
