using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Bursts;

internal static class BurstTables
{
    public static Table<BurstRow> Table(ImmutableArray<BurstRow> rows) => new(
        "bursts",
        "Strongest bursts",
        "Of every stretch of days of one lot at one site, of one lot, of one site and of all, the one in which most more events were seen than the sites' own rates expect, and how often chance alone makes one as strong somewhere. A burst of confirmed positives is an outbreak, not a fault.",
        [
            new("measure", "Events", Unit.Text, "Refuted positives, inconclusive and invalid (unusable) runs, or confirmed positives.", row => Cell.Text(row.Measure)),
            new("events", "In all", Unit.Count, "Events in all.", row => Cell.Count(row.Events)),
            new("lot", "Lot", Unit.Text, "The lot of the burst; (all) for all lots together.", row => Name(row, row.Lot)),
            new("site", "Site", Unit.Text, "The site of the burst; (all) for all sites together.", row => Name(row, row.Site)),
            new("first_day", "From", Unit.Date, "Day of its first event.", row => Cell.Date(row.FirstDay)),
            new("last_day", "To", Unit.Date, "Day of its last event.", row => Cell.Date(row.LastDay)),
            new("runs", "Runs", Unit.Count, "Valid tests in it; for unusable runs all runs.", row => Cell.Count(row.Runs)),
            new("observed", "Observed", Unit.Count, "Events in it.", row => Cell.Count(row.Observed)),
            new("expected", "Expected", Unit.Ratio, "Events in it if each site had its own rate on every day and with every lot.", row => Cell.NumberOr(row.Expected, row.Undefined ?? "")) { Method = MethodNames.BurstScan },
            new("log_likelihood_ratio", "Strength", Unit.Ratio, "Natural logarithm of how much better a rate of its own explains the burst.", row => Cell.NumberOr(row.LogLikelihoodRatio, row.Undefined ?? "")) { Method = MethodNames.BurstScan },
            new("chance_under_no_burst", "Chance under no burst", Unit.PValue, "Share of simulated programs without a burst whose strongest one is as strong, the real one among them.", row => Cell.NumberOr(row.ChanceUnderNoBurst, row.Undefined ?? "")) { Method = MethodNames.BurstSimulation },
            new("replicates", "Simulated", Unit.Count, "Simulated programs.", row => Cell.Count(row.Replicates)),
            new("seed", "Seed", Unit.Count, "What the simulation starts from.", row => Cell.Count((long)row.Seed)),
            new("longest_days", "Longest", Unit.Count, "The longest burst that was looked for, in days.", row => Cell.Count(row.LongestDays)),
        ],
        rows);

    private static Cell Name(BurstRow row, string? name) => row.Undefined is not null ? Cell.Empty : Cell.Text(name ?? "(all)");
}
