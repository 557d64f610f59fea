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

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("bernoulli-cumulative-sums").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    [Fact]
    public void The_limit_found_reaches_the_target_and_one_step_lower_does_not() =>
        Gen.Select(Gen.Double[-4, -1], Gen.Double[1.5, 5], Gen.Double[2, 7], Gen.Bool, Gen.Bool).Sample(
            (log, ratio, logTarget, above, fast) =>
            {
                var rate = Math.Pow(10, log);
                var design = BernoulliCumulativeSum.Design(rate, Math.Min(0.6, rate * ratio));
                var options = new CumulativeSumOptions { Signal = above ? SignalRule.Above : SignalRule.AtOrAbove };
                var found = BernoulliCumulativeSum.LimitFor(design, FalseAlarmTarget.OnceInRuns(Math.Pow(10, logTarget)), options, fast ? 0.5 : 0);
                var again = fast ? null : found.Limit is { } limit && limit > 0 ? BernoulliCumulativeSum.AverageRunLength(design, limit, rate, options).Value : null;
                return found.Reached >= found.Target.Runs && (found.ReachedOneStepLower is not { } lower || lower < found.Target.Runs)
                    && (again is null || again == found.Reached) && found.ToFindAdjusted < found.Reached;
            },
            iter: 20);

    // The hardest case asked for: one event in 10,000 in order, one false alarm in ten million runs.
    [Fact]
    public void One_false_alarm_in_ten_million_runs_at_one_event_in_ten_thousand_is_found()
    {
        var design = BernoulliCumulativeSum.Design(0.0001, 0.0002);
        var found = BernoulliCumulativeSum.LimitFor(design, FalseAlarmTarget.OnceInDays(10_000, 1_000));
        found.Target.Runs.Should().Be(10_000_000);
        found.Reached.Should().BeInRange(10_000_000, 10_010_000);
        found.ReachedOneStepLower.Should().BeLessThan(10_000_000);
        BernoulliCumulativeSum.CorrectedDiffusion(design, found.Limit!.Value, toFind: false).Value.Should().BeApproximately(found.Reached!.Value, 0.02 * found.Reached!.Value);
    }

    [Fact]
    public void High_rates_find_a_lattice_of_their_own()
    {
        var design = BernoulliCumulativeSum.Design(0.3, 0.5);
        design.Numerator.Should().BeGreaterThan(1);
        design.AdjustedRateToFind.Should().BeApproximately(0.5, 0.02);
        var limit = BernoulliCumulativeSum.LimitFor(design, FalseAlarmTarget.OnceInRuns(1000));
        limit.Reached.Should().BeGreaterThanOrEqualTo(1000);
    }

    [Theory]
    [InlineData(0.02, 0)]
    [InlineData(0.05, 0)]
    [InlineData(0.02, 1.5)]
    public void A_simulated_average_agrees_within_three_standard_errors(double rate, double start)
    {
        var design = BernoulliCumulativeSum.Design(0.02, 0.05);
        var random = new Random(6);
        var options = new CumulativeSumOptions { HeadStart = start };
        var lengths = Enumerable.Range(0, 4000).Select(_ =>
        {
            var sum = start;
            for (var n = 1; ; n++)
            {
                sum = Math.Max(0, sum + (random.NextDouble() < rate ? 1 : 0) - (1.0 / 30));
                if (sum >= 3 - 1e-9) return (double)n;
            }
        }).ToArray();
        Simulated.ShouldAgree(lengths, BernoulliCumulativeSum.AverageRunLength(design, 3, rate, options).Value!.Value);
    }

    [Fact]
    public void A_path_is_exact_on_its_lattice_however_long()
    {
        var design = BernoulliCumulativeSum.DesignOnLattice(0.1, 0.2, 7);
        var path = BernoulliCumulativeSum.Path(design, 3, [true, true, true, .. Enumerable.Repeat(false, 18), true], new CumulativeSumOptions());
        path.Points[2].Statistic.Should().Be(18 / 7.0);
        path.Points[20].Statistic.Should().Be(0);
        path.Points[21].Statistic.Should().Be(6 / 7.0);
        path.Signals.Should().BeEmpty();
        BernoulliCumulativeSum.Path(design, 18 / 7.0, [true, true, true]).Signals.Should().ContainSingle().Which.RisingSince.Should().Be(0);
    }

    // In whatever order the observations of a group came, the sum run by run is at least as high at its end.
    [Fact]
    public void The_sum_over_groups_never_exceeds_the_sum_run_by_run_at_their_ends() =>
        Gen.Select(Gen.Bool.Array[0, 12].Array[1, 30], Gen.Long[3, 8]).Sample((groups, denominator) =>
        {
            var design = BernoulliCumulativeSum.DesignOnLattice(0.9 / denominator, 0.99, denominator);
            var grouped = BernoulliCumulativeSum.GroupedPath(design, 3, [.. groups.Select(group => ((long)group.Count(one => one), (long)group.Length))]);
            var single = BernoulliCumulativeSum.Path(design, 3, [.. groups.SelectMany(group => group)]);
            var end = 0;
            for (var i = 0; i < groups.Length; i++)
            {
                end += groups[i].Length;
                if (end > 0 && grouped.Points[i].Statistic > single.Points[end - 1].Statistic + 1e-12) return false;
            }

            return true;
        });

    [Fact]
    public void Edges_are_answered_and_figures_outside_their_domain_are_refused()
    {
        var design = BernoulliCumulativeSum.Design(0.01, 0.025);
        BernoulliCumulativeSum.AverageRunLength(design, 3, 0).Reason.Should().Be(UndefinedReason.NeverSignals);
        BernoulliCumulativeSum.AverageRunLength(design, 3, 1).Value.Should().Be(4);
        BernoulliCumulativeSum.AverageRunLength(design, 0.5, 0.01).Value.Should().BeApproximately(100, 1e-9);
        BernoulliCumulativeSum.AverageRunLength(design, 3000, 0.001).Reason.Should().Be(UndefinedReason.TooLarge);
        BernoulliCumulativeSum.CorrectedDiffusion(design, 3000, toFind: false).Reason.Should().Be(UndefinedReason.TooLarge);
        FluentActions.Invoking(() => BernoulliCumulativeSum.Design(0, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BernoulliCumulativeSum.Design(0.1, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BernoulliCumulativeSum.DesignOnLattice(0.1, 0.2, 10)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BernoulliCumulativeSum.AverageRunLength(design, 0, 0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BernoulliCumulativeSum.AverageRunLength(design, 3, -0.1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BernoulliCumulativeSum.GroupedPath(design, 3, [(3, 2)])).Should().Throw<ArgumentOutOfRangeException>();
    }
}
