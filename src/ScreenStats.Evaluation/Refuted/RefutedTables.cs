using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Refuted;

/// <summary>The table of refuted positives.</summary>
internal static class RefutedTables
{
    public static Table<RefutedFinding> Table(ImmutableArray<RefutedFinding> rows) => new(
        "refuted",
        "Refuted positives per 1,000 valid tests",
        "Positive runs whose confirmatory test was negative, of all valid tests. Refuted is the confirmatory test's word, not the truth; "
        + "positive runs without a conclusive result are counted beside them.",
        [
            LevelColumns.By<RefutedFinding>(row => row.Grouping),
            LevelColumns.Level<RefutedFinding>(row => row.Level),
            new("tests", "Valid tests", Unit.Count, "Negative and positive runs.", row => Cell.Count(row.ValidTests)),
            new("refuted", "Refuted", Unit.Count, "Positive runs whose confirmatory test was negative.", row => Cell.Count(row.RefutedRuns)),
            new("without_conclusion", "Without conclusion", Unit.Count, "Positive runs without a conclusive confirmatory result.", row => Cell.Count(row.WithoutConclusion)),
            new("per_thousand", "Per 1,000", Unit.PerThousand, "Refuted runs per 1,000 valid tests.", row => Cell.NumberOr(row.PerThousand, row.PerThousandUndefined ?? "")) { Method = Methods.MethodNames.Share },
            .. ShareColumns.For<RefutedFinding>(row => row.Rate),
        ],
        rows);
}
