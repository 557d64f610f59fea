using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Conduct;

/// <summary>How runs were carried out.</summary>
internal static class ConductPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "conduct", "How runs were carried out", findings.Conduct,
        "Only what the exports record can be found: a run read too early with no reading time leaves no trace.",
        "Runs with an expired lot, read outside the window of the device, beyond the number that a kit holds, or on a person within the isolation period " +
        "after a confirmatory positive. Such runs are counted in all figures and shown here.")
    {
        Tables = [.. findings.Conduct.Tables.Select(TableViews.Whole)],
    };
}
