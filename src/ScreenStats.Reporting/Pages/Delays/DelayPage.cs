using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Delays;

/// <summary>How long people waited for specimen and report.</summary>
internal static class DelayPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "delays", "How long people waited", findings.Delays,
        "Waiting times are of those who were followed up; those who never were waited longer than any of these.",
        "Hours from run to specimen and from specimen to report, median and 90th percentile by nearest rank. Specimens without a recorded report are counted, not guessed.")
    {
        Tables = [.. findings.Delays.Tables.Select(TableViews.Whole)],
        Caution = "Waiting ends no isolation: until the confirmatory result is there, local rules say what holds for the person.",
    };
}
