using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;
using ScreenStats.Statistics.Monitoring.Sequential.RiskAdjusted;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class RiskAdjustedCumulativeSumTests
{
    [Fact]
    public void Every_weight_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("likelihood-weights"), row =>
    {
        var weights = LikelihoodWeights.Adjusted(row.Number("expected"), row.Number("to_find"), row.Number("in_order"));
        return [row.Mismatch("event", weights.Event), row.Mismatch("no_event", weights.NonEvent)];
    });

    [Fact]
    public void Every_weight_between_two_rates_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("rate-weights"), row =>
    {
        var weights = LikelihoodWeights.OfRates(row.Number("in_order"), row.Number("to_find"));
        return [row.Mismatch("event", weights.Event), row.Mismatch("no_event", weights.NonEvent)];
    });

    [Fact]
    public void Every_run_length_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("risk-adjusted-run-lengths"), row =>
    {
        var counts = row.Numbers("counts");
        var mix = row.Numbers("rates").Select((rate, i) => new ExpectedRate(rate, counts[i])).ToList();
        return
        [
            row.Mismatch("run_length", RiskAdjustedCumulativeSum.AverageRunLength(
                mix, row.Number("to_find"), row.Number("limit"), row.Number("odds_ratio"), row.Number("head_start")).Value),
        ];
    });

    [Fact]
    public void There_are_at_least_fifty_independent_rows_of_each()
    {
        foreach (var table in new[] { "likelihood-weights", "risk-adjusted-run-lengths" })
            ReferenceTable.Load(table).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, table);
    }

    // Under the odds ratio in order the likelihood ratio has mean 1.
    [Fact]
    public void The_mean_likelihood_ratio_is_one_at_the_odds_ratio_in_order() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.1, 10], Gen.Double[0.3, 3]).Where((_, find, order) => find != order).Sample((expected, find, order) =>
        {
            var weights = LikelihoodWeights.Adjusted(expected, find, order);
            var rate = order * expected / (1 - expected + (order * expected));
            return Math.Abs((rate * Math.Exp(weights.Event)) + ((1 - rate) * Math.Exp(weights.NonEvent)) - 1) < 1e-11;
        });

    [Fact]
    public void Equal_expected_rates_weigh_as_the_two_rates_do()
    {
        var weights = LikelihoodWeights.OfRates(0.02, 0.05);
        var adjusted = LikelihoodWeights.Adjusted(0.02, 0.05 / 0.95 / (0.02 / 0.98));
        adjusted.Event.Should().BeApproximately(weights.Event, 1e-14);
        adjusted.NonEvent.Should().BeApproximately(weights.NonEvent, 1e-14);
    }

    [Fact]
    public void A_path_adds_the_weights_of_its_observations()
    {
        var path = RiskAdjustedCumulativeSum.Path([new(0.1, true), new(0.5, false), new(0.02, true), new(0.9, true)], 2, 1.2);
        var expected = new[] { Math.Log(2 / 1.1), Math.Log(2 / 1.1) - Math.Log(1.5), Math.Log(2 / 1.1) - Math.Log(1.5) + Math.Log(2 / 1.02), 0 };
        expected[3] = expected[2] + Math.Log(2 / 1.9);
        path.Points.Zip(expected).Should().OnlyContain(pair => Math.Abs(pair.First.Statistic - pair.Second) < 1e-12);
        path.Signals.Should().BeEmpty();
        RiskAdjustedCumulativeSum.Path([new(0.1, true), new(0.1, true), new(0.1, true)], 2, 1.2).Signals.Should().ContainSingle().Which.Index.Should().Be(2);
        RiskAdjustedCumulativeSum.Path([new(0.1, true)], 2, 1.2, new CumulativeSumOptions { HeadStart = 0.9 }).Signals.Should().ContainSingle();
    }

    [Theory]
    [InlineData(2, 1, 0)]
    [InlineData(2, 2, 1)]
    [InlineData(0.5, 0.5, 0)]
    public void A_simulated_average_agrees_within_three_standard_errors(double toFind, double truth, double start)
    {
        ExpectedRate[] mix = [new(0.02, 3), new(0.1, 2), new(0.4, 1)];
        double[] drawn = [0.02, 0.02, 0.02, 0.1, 0.1, 0.4];
        var random = new Random(9);
        var lengths = Enumerable.Range(0, 3000).Select(_ =>
        {
            var sum = start;
            for (var n = 1; ; n++)
            {
                var p = drawn[random.Next(6)];
                var weights = LikelihoodWeights.Adjusted(p, toFind);
                sum = Math.Max(0, sum + (random.NextDouble() < truth * p / (1 - p + (truth * p)) ? weights.Event : weights.NonEvent));
                if (sum >= 2.3) return (double)n;
            }
        }).ToArray();
        Simulated.ShouldAgree(lengths, RiskAdjustedCumulativeSum.AverageRunLength(mix, toFind, 2.3, truth, start).Value!.Value);
    }

    [Fact]
    public void What_cannot_signal_is_undefined_and_figures_outside_their_domain_are_refused()
    {
        RiskAdjustedCumulativeSum.AverageRunLength([], 2, 4).Reason.Should().Be(UndefinedReason.NoTrials);
        RiskAdjustedCumulativeSum.AverageRunLength([new(0, 1)], 2, 4).Reason.Should().Be(UndefinedReason.NeverSignals);
        FluentActions.Invoking(() => LikelihoodWeights.Adjusted(0.1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LikelihoodWeights.Adjusted(1.1, 2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LikelihoodWeights.Adjusted(0.1, -2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new ExpectedRate(0.1, -1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new RatedObservation(double.NaN, true)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => RiskAdjustedCumulativeSum.AverageRunLength([new(0.1, 1)], 2, 30)).Should().Throw<ArgumentOutOfRangeException>();
    }
}
