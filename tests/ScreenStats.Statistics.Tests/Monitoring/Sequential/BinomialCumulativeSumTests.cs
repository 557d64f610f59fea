using ScreenStats.Statistics.Monitoring.Sequential.CountSums;
using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class BinomialCumulativeSumTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("binomial-cumulative-sums"), row =>
    {
        var design = BinomialCumulativeSum.Design(row.Count("group_size"), row.Number("reference"), row.Number("limit"));
        var options = new CumulativeSumOptions
        {
            HeadStart = row.Number("head_start"),
            Signal = row.Text("signal") == "above" ? SignalRule.Above : SignalRule.AtOrAbove,
        };
        return [row.Mismatch("run_length", BinomialCumulativeSum.AverageRunLength(design, row.Number("rate"), options).Value)];
    });

    [Fact]
    public void Every_reference_value_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("binomial-references"), row =>
        [row.Mismatch("reference", BinomialCumulativeSum.Reference(row.Count("group_size"), row.Number("in_order"), row.Number("to_find")))]);

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("binomial-cumulative-sums").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    // A group of one is a Bernoulli sum; the two are solved by different methods.
    [Fact]
    public void A_group_of_one_has_the_run_length_of_the_sum_run_by_run() =>
        Gen.Select(Gen.Long[3, 60], Gen.Int[1, 200], Gen.Double[0.005, 0.4], Gen.Double[0, 0.9]).Sample((denominator, steps, rate, share) =>
        {
            var options = new CumulativeSumOptions { HeadStart = Math.Floor(share * steps) / denominator };
            var limit = (double)steps / denominator;
            var design = BernoulliCumulativeSum.DesignOnLattice(0.9 / denominator, 0.99, denominator);
            var one = BernoulliCumulativeSum.AverageRunLength(design, limit, rate, options).Value!.Value;
            var other = BinomialCumulativeSum.AverageRunLength(BinomialCumulativeSum.Design(1, 1.0 / denominator, limit), rate, options).Value!.Value;
            return Math.Abs(one - other) <= 1e-9 * one;
        });

    [Fact]
    public void A_reference_value_off_every_lattice_is_moved_and_said_so()
    {
        var design = BinomialCumulativeSum.Design(50, 7.994884540, 6);
        design.ReferenceOnLattice.Should().BeApproximately(7.994884540, 0.5 / design.Units).And.NotBe(design.Reference);
        var near = BinomialCumulativeSum.AverageRunLength(design, 0.11).Value!.Value;
        near.Should().BeInRange(500, 525);
        BinomialCumulativeSum.Design(50, 8.25, 6).Should().Match<BinomialDesign>(one => one.Units == 4 && one.ReferenceOnLattice == 8.25);
    }

    [Fact]
    public void The_limit_found_reaches_the_target_and_one_step_lower_does_not()
    {
        foreach (var (size, k, p) in new[] { (50L, 8.0, 0.11), (50, 8.25, 0.11), (20, 2, 0.05), (100, 3.5, 0.02), (200, 1.5, 0.002) })
        {
            var (design, reached) = BinomialCumulativeSum.LimitFor(size, k, p, FalseAlarmTarget.OnceInRuns(size * 1000));
            reached.Value.Should().BeGreaterThanOrEqualTo(1000);
            BinomialCumulativeSum.AverageRunLength(design!, p).Value.Should().Be(reached.Value);
            var lower = BinomialCumulativeSum.Design(size, k, design!.Limit - (1.0 / design.Units));
            BinomialCumulativeSum.AverageRunLength(lower, p).Value.Should().BeLessThan(1000);
        }
    }

    [Fact]
    public void A_simulated_average_agrees_within_three_standard_errors()
    {
        var design = BinomialCumulativeSum.Design(20, 2, 4);
        var random = new Random(11);
        var lengths = Enumerable.Range(0, 3000).Select(_ =>
        {
            double sum = 0;
            for (var n = 1; ; n++)
            {
                var events = Enumerable.Range(0, 20).Count(_ => random.NextDouble() < 0.1);
                sum = Math.Max(0, sum + events - 2);
                if (sum >= 4) return (double)n;
            }
        }).ToArray();
        Simulated.ShouldAgree(lengths, BinomialCumulativeSum.AverageRunLength(design, 0.1).Value!.Value);
    }

    [Fact]
    public void What_cannot_signal_is_undefined_and_figures_outside_their_domain_are_refused()
    {
        BinomialCumulativeSum.AverageRunLength(BinomialCumulativeSum.Design(20, 2, 4), 0).Reason.Should().Be(UndefinedReason.NeverSignals);
        BinomialCumulativeSum.AverageRunLength(BinomialCumulativeSum.Design(20, 2, 4), 1).Value.Should().Be(1);
        BinomialCumulativeSum.LimitFor(1000, 100.5, 0.1, FalseAlarmTarget.OnceInRuns(1e15)).Reached.Reason.Should().Be(UndefinedReason.NoLimitFound);
        FluentActions.Invoking(() => BinomialCumulativeSum.Design(0, 1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BinomialCumulativeSum.Design(10, 10, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BinomialCumulativeSum.Design(10, 1, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BinomialCumulativeSum.Path(BinomialCumulativeSum.Design(10, 1, 2), [11])).Should().Throw<ArgumentOutOfRangeException>();
        BinomialCumulativeSum.Path(BinomialCumulativeSum.Design(10, 1.5, 2), [3, 2, 0, 5]).Points.Select(point => point.Statistic).Should().Equal(1.5, 2, 0.5, 4);
    }
}
