using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Evaluation.Bursts;

/// <summary>The strongest bursts of refuted positives, confirmed positives and unusable runs.</summary>
internal static class BurstAnalysis
{
    /// <summary>A chance above this is no more than what falls together by chance somewhere.</summary>
    public const double Remarkable = 0.01;

    private const int MostReplicates = 999;
    private const int FewestReplicates = 99;
    private const int FirstReplicates = 39;
    // Thrown events, all replicates together: keeps the time of the simulation the same for large programs.
    private const int MostThrown = 40_000;
    private const ulong Seed = 1;

    public static BurstFindings Of(Tally tally)
    {
        var counts = new BurstCounts(tally);
        const string NoConfirmatory = "there is no confirmatory export, so no positive could be confirmed or refuted";
        var confirmatory = tally.Cells.HasConfirmatory ? null : NoConfirmatory;
        var rows = new[]
        {
            Row(counts, "refuted", BurstCounts.Part.Tests, BurstCounts.Part.Refuted, confirmatory),
            Row(counts, "unusable", BurstCounts.Part.Runs, BurstCounts.Part.Unusable, null),
            Row(counts, "confirmed", BurstCounts.Part.Tests, BurstCounts.Part.Confirmed, confirmatory),
        };
        return new BurstFindings([.. rows], BurstTables.Table([.. rows]), BurstSentences.Of(rows));
    }

    private static BurstRow Row(BurstCounts counts, string measure, BurstCounts.Part trials, BurstCounts.Part events, string? undefined)
    {
        var seen = counts.Total(events);
        var options = new BurstScanOptions { Seed = Seed, FirstReplicates = FirstReplicates, Replicates = (int)Math.Clamp(MostThrown / Math.Max(1, seen), FewestReplicates, MostReplicates) };
        BurstRow None(string why) => new(measure, seen, null, null, null, null, 0, 0, null, null, null, why, 0, Seed, options.LongestDays);
        if (undefined is not null) return None(undefined);
        if (seen == 0) return None(measure switch { "refuted" => "no positive was refuted", "confirmed" => "no positive was confirmed", _ => "no run was unusable" });
        if (seen > BurstScan.LargestEvents) return None("there are more than ten million such runs, which are not searched");
        var result = BurstScan.Strongest(counts.Cells(trials, events), options);
        if (result.Strongest is not { } burst) return None((result.Reason ?? UndefinedReason.NoWindowWithExcess).Describe());
        return new BurstRow(
            measure, seen, burst.Lot is { } lot ? counts.Lot(lot) : null, burst.Site is { } site ? counts.Site(site) : null,
            DateOnly.FromDayNumber(burst.FirstDay), DateOnly.FromDayNumber(burst.LastDay), counts.In(burst, trials), burst.Observed, burst.Expected,
            burst.LogLikelihoodRatio, result.ChanceUnderNoBurst, null, result.Simulated, Seed, options.LongestDays);
    }
}
