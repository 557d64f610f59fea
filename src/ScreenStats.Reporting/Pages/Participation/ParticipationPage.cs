using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Participation;

/// <summary>How often people were tested.</summary>
internal static class ParticipationPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "participation", "How often people were tested", findings.Participation,
        "Who was asked and did not come is not in the exports; only a headcount shows that.",
        "Counted runs per person, and days between consecutive runs of the same person, as nearest-rank percentiles.")
    {
        Tables = [.. findings.Participation.Tables.Select(TableViews.Whole)],
    };
}
