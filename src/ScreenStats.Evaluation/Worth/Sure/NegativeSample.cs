using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Economics.Uncertainty.Information;

namespace ScreenStats.Evaluation.Worth.Sure;

/// <summary>What verifying a sample of negatives would be worth before choosing.</summary>
/// <remarks>
/// In each draw the sensitivity s says how many of the negatives are infected, confirmed x (1 - s)/s of them, and a sample of n then holds a binomial number; the value of learning that number is found
/// as for any figure, by regression of the net benefits on it. Source: Strong M, Oakley JE, Brennan A, Breeze P, Med Decis Making 2015;35:570-583 (from memory).
/// </remarks>
internal static class NegativeSample
{
    /// <summary>A value within so many standard errors of 0 is noise.</summary>
    private const double Noise = 2;

    private static readonly int[] Sizes = [100, 300, 1_000, 3_000];

    /// <summary>The sample that is worth most after its cost; null where the sensitivity is taken as exact, or prices or counts are missing.</summary>
    public static WorthInformation? Of(CostModel model, NetBenefitTable table, Tally tally)
    {
        var draws = model.Work.Draws;
        if (draws.Ends(Parameter.Sensitivity) is null || !model.Prices.Knows(Price.ConfirmatoryTest) || !tally.Cells.HasConfirmatory) return null;
        var counts = RunCounts.Of(tally.Cells.Screens);
        var negatives = counts[Outcome.Negative];
        if (counts.Confirmed == 0 || negatives < Sizes[0]) return null;
        var sensitivity = draws.Drawn(Parameter.Sensitivity);
        double[] missed = [.. Enumerable.Range(0, draws.Count).Select(draw => Missed(counts.Confirmed, negatives, sensitivity(draw)!.Value))];
        var price = model.Prices.Centre[Price.ConfirmatoryTest];
        var best = AllAtOnce.Of(Sizes.Where(size => size <= negatives).ToList(), size =>
        {
            var stream = new ParameterStream(model.Work.Known.Settings.Seed, FormattableString.Invariant($"sample-of-negatives-{size}"));
            var worth = PerfectInformation.OfParameter(table, Array.ConvertAll(missed, share => (double)stream.Binomial(size, share)));
            return new WorthInformation("sample-of-negatives", "verifying a sample of negatives", worth.Value, worth.StandardError, WorthNotes.Sample, size, size * price);
        }).MaxBy(Net)!;
        return best;
    }

    /// <summary>Whether it is worth its cost, beyond what chance in the draws makes.</summary>
    public static bool Pays(WorthInformation sample) => sample.Value - sample.SampleCost > Noise * (sample.StandardError ?? 0);

    private static double Missed(long confirmed, long negatives, double sensitivity) => sensitivity > 0 ? Math.Min(1, confirmed * (1 - sensitivity) / sensitivity / negatives) : 1;

    private static double Net(WorthInformation sample) => sample.Value - sample.SampleCost!.Value;
}
