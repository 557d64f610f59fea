using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Detection;

/// <summary>What the flag rule would see.</summary>
internal static class DetectionPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "detection", "What the flag rule would see, and miss", findings.Detection,
        "How surely a fault that is not the same in all runs of a lot would be found, such as one site's storage: see bursts. Runs of the same people are not independent, and a flag needs a second, widened chance too: both make the true chances somewhat lower.",
        "The chance that the rule that flags lots (exact test against all lots, adjusted for their number, below 0.01) flags a lot, by its size and by how many times the others' rate its own is: summed over all that the lot and the others may show, " +
        "with this program's number of lots and tests and the rate of its lots that are not flagged.")
    {
        Charts = DetectionFigures.Of(findings),
        Tables = [View(findings, "refuted", "Refuted positives"), View(findings, "invalid", "Inconclusive and invalid runs")],
        Caution = "That a lot or site is not flagged does not clear it: where the curve is low most faults go unseen, so control swabs and confirmatory tests stay necessary.",
    };

    private static TableView View(Findings findings, string measure, string caption) => new(
        findings.Detection.Table.Only(row => row.Measure == measure && row.Times is (1 or 2 or 3 or 5 or 10 or 20)), $"{caption}: chance of a flag", ["size", "trials", "other_trials", "lots", "rate", "times", "chance"]);
}
