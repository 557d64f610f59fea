using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Bursts;

/// <summary>The strongest bursts.</summary>
internal static class BurstPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "bursts", "Where events came in bursts", findings.Bursts,
        "Why. A burst of confirmed positives may be people infected together, or more infection outside; one of refuted positives or unusable runs may be a lot, a delivery, a refrigerator, a person reading, or chance where it says so.",
        "Every stretch of at most 28 days of one lot at one site, of one lot, of one site and of the whole program is searched for the one that a rate of its own explains best (likelihood ratio, M. Kulldorff, 1997). Each site has its own rate. " +
        "The chance is simulated: events are thrown on the runs anew and everything is searched again; number of simulated programs and seed are in the table.")
    {
        Tables = [new TableView(findings.Bursts.Table, "Strongest burst of each kind", ["measure", "events", "lot", "site", "first_day", "last_day", "runs", "observed", "expected", "log_likelihood_ratio", "chance_under_no_burst", "replicates", "seed"])],
        Caution = "A burst may be an outbreak or a fault, and counts cannot tell which: take it for an outbreak, and act by local rules, until confirmatory tests say otherwise.",
    };
}
