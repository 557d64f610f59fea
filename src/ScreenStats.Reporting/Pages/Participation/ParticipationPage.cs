using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Participation;

namespace ScreenStats.Reporting.Pages.Participation;

/// <summary>How often people were tested.</summary>
internal static class ParticipationPage
{
    private const int MostDays = 14;

    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "participation", "How often people were tested", findings.Participation,
        "Who was asked and did not come is not in the exports; only a headcount shows that.",
        "Counted runs per person, and days between consecutive runs of the same person, as nearest-rank percentiles. Both distributions stand in tables/participation.csv.")
    {
        Tables =
        [
            .. findings.Participation.Tables.OfType<Table<ParticipationRow>>().Select(table => new TableView(
                table.Only(row => row.Measure == "days-between-runs" && row.Value <= MostDays), "Days between a person's consecutive runs, up to two weeks",
                [new("value", "Days"), new("count", "Pairs of runs"), "share"])),
            .. findings.Participation.Tables.Select(table => TableViews.Whole(table) with { Folded = true }),
        ],
    };
}
