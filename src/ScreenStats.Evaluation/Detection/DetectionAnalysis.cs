using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Statistics.Monitoring.Acceptance;

namespace ScreenStats.Evaluation.Detection;

/// <summary>How surely the flag rule in force finds a faulty lot, by its size and its fault.</summary>
internal static class DetectionAnalysis
{
    /// <summary>The faults, as multiples of the others' rate.</summary>
    public static ImmutableArray<double> Times { get; } = [1, 1.5, 2, 3, 4, 5, 7, 10, 14, 20];

    /// <summary>Sizes of lots: those of this program, and a tenth of all.</summary>
    public const string Tenth = "tenth-of-all";

    public static DetectionFindings Of(PlanOfFlags flags)
    {
        var oneLot = flags.Lots < 2 ? "fewer than two lots are recorded, so none can be flagged" : null;
        ImmutableArray<DetectionRow> rows =
        [
            .. oneLot is null && flags.RefutedRate is { } refuted ? Rows("refuted", flags.TestsByLot, refuted) : [],
            .. oneLot is null && flags.InvalidRate is { } invalid ? Rows("invalid", flags.RunsByLot, invalid) : [],
        ];
        var findings = new DetectionFindings(
            StepDown.Threshold, flags.Lots, rows, oneLot ?? flags.RefutedUndefined, oneLot ?? flags.InvalidUndefined, DetectionTables.Table(rows), []);
        return findings with { Sentences = DetectionSentences.Of(findings) };
    }

    private static IEnumerable<DetectionRow> Rows(string measure, ImmutableArray<long> sizes, double rate)
    {
        var all = sizes.Sum();
        long Rank(double share) => sizes[Math.Max(0, (int)Math.Ceiling(share * sizes.Length) - 1)];
        (string Name, long Trials)[] chosen = [("tenth-percentile", Rank(0.1)), ("median", Rank(0.5)), ("ninetieth-percentile", Rank(0.9)), (Tenth, Math.Max(1, all / 10))];
        foreach (var (name, trials) in chosen)
        {
            if (trials >= all) continue;
            var rule = new FlagRule { Rate = rate, OtherTrials = all - trials, Lots = sizes.Length, Threshold = StepDown.Threshold };
            double[] possible = [.. Times.Where(times => times * rate <= 1)];
            var chances = FlagCurve.Chances(rule, trials, possible);
            for (var index = 0; index < Times.Length; index++)
            {
                var chance = index < possible.Length ? chances[index] : (double?)null;
                yield return new DetectionRow(
                    $"{measure}|{name}|{Times[index].ToString(CultureInfo.InvariantCulture)}", measure, name, trials, all - trials, sizes.Length, rate, Times[index],
                    chance, chance is null ? "more than every run would be an event" : null);
            }
        }
    }
}
