using ScreenStats.Statistics.Monitoring.Sequential.CountSums;
using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class BernoulliCumulativeSumTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("bernoulli-cumulative-sums"), row =>
    {
        var design = row.Has("denominator")
            ? BernoulliCumulativeSum.DesignOnLattice(row.Number("in_order"), row.Number("to_find"), row.Count("denominator"))
            : BernoulliCumulativeSum.Design(row.Number("in_order"), row.Number("to_find"));
        var options = new CumulativeSumOptions
        {
            HeadStart = row.Has("head_start") ? row.Number("head_start") : 0,
            Signal = row.Text("signal") == "above" ? SignalRule.Above : SignalRule.AtOrAbove,
        };
        var limit = row.Number("limit");
        double? Exact(double rate) => BernoulliCumulativeSum.AverageRunLength(design, limit, rate, options).Value;
        return
        [
            row.Mismatch("steps", design.Denominator), row.Mismatch("adjusted", design.AdjustedRateToFind),
            row.Mismatch("run_length_in_order", Exact(design.RateInOrder)),
            row.Mismatch("run_length_to_find", Exact(design.AdjustedRateToFind)),
            row.Mismatch("run_length_at", row.Has("rate") ? Exact(row.Number("rate")) : null),
            row.Mismatch("diffusion_in_order", BernoulliCumulativeSum.CorrectedDiffusion(design, limit, toFind: false).Value),
            row.Mismatch("diffusion_to_find", BernoulliCumulativeSum.CorrectedDiffusion(design, limit, toFind: true).Value),
        ];
    });
}
