using ScreenStats.Statistics.Monitoring.Sequential.Evidence;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public sealed class RateRiseTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("rate-rises"), row =>
        [row.Mismatch("log_evidence", RateRise.LogEvidence([.. row.Numbers("before")], row.Number("now")))]);

    [Fact]
    public void There_are_at_least_fifty_independent_rows() =>
        ReferenceTable.Load("rate-rises").Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50);

    // With the times of n events given, T / T' of the next one is uniform to the power 1 / n under every constant rate. Midpoint rule.
    [Fact]
    public void Whatever_came_before_the_mean_after_the_next_event_is_the_evidence_before_it() =>
        Gen.Double[0.001, 1000].Array[1, 8].Sample(
            gaps =>
            {
                var times = new List<double>();
                foreach (var gap in gaps) times.Add((times.Count == 0 ? 0 : times[^1]) + gap);
                const int Steps = 20_000;
                double mean = 0;
                for (var step = 0; step < Steps; step++)
                {
                    var next = times[^1] / Math.Pow((step + 0.5) / Steps, 1.0 / times.Count);
                    mean += Math.Exp(RateRise.LogEvidence([.. times, next], next)) / Steps;
                }

                return Math.Abs(mean / Math.Exp(RateRise.LogEvidence(times, times[^1])) - 1) < 0.01;
            },
            iter: 20);

    [Fact]
    public void Only_ratios_of_tests_matter() => Gen.Select(Gen.Double[1, 1000].Array[2, 20], Gen.Double[0.01, 100]).Sample((gaps, unit) =>
    {
        var times = gaps.Select((_, i) => gaps.Take(i + 1).Sum()).ToArray();
        return Math.Abs(RateRise.LogEvidence(times, times[^1]) - RateRise.LogEvidence([.. times.Select(time => time * unit)], times[^1] * unit)) < 1e-9;
    });

    [Fact]
    public void More_tests_since_take_evidence_away_and_more_before_add_to_it() => Gen.Select(Gen.Double[1, 1000].Array[2, 20], Gen.Double[1, 1000]).Sample((gaps, more) =>
    {
        var times = gaps.Select((_, i) => gaps.Take(i + 1).Sum()).ToArray();
        var evidence = RateRise.LogEvidence(times, times[^1]);
        return RateRise.LogEvidence(times, times[^1] + more) < evidence + 1e-12
            && RateRise.LogEvidence([.. times.Select(time => time + more)], times[^1] + more) > evidence - 1e-12;
    });

    // 4,000 places whose rate is constant, seen at the end of days of 200 tests; whole days before and after, as the alarm has them.
    [Theory]
    [InlineData(0.002)]
    [InlineData(0.02)]
    public void The_chance_of_ever_alarming_at_a_constant_rate_is_held(double rate)
    {
        const int Places = 4_000;
        const double Level = 0.05;
        var random = new Random(20261125);
        var alarms = Enumerable.Range(0, Places).Count(_ =>
        {
            var before = new List<double>();
            for (var day = 0; before.Count < 60 && day < 300; day++)
            {
                var events = Enumerable.Range(0, 200).Count(_ => random.NextDouble() < rate);
                before.AddRange(Enumerable.Repeat(day * 200.0, events));
                if (events > 0 && RateRise.LogEvidence(before, (day + 1) * 200.0) >= -Math.Log(Level)) return true;
            }

            return false;
        });
        ((double)alarms / Places).Should().BeLessThanOrEqualTo(Level + (3 * Math.Sqrt(Level * (1 - Level) / Places)));
        if (rate < 0.01) alarms.Should().BePositive("a test that never sees an alarm would pass with any threshold");
    }

    [Fact]
    public void A_twentyfold_rise_after_ten_events_is_found_within_eight()
    {
        double[] before = [.. Enumerable.Range(1, 10).Select(i => 5000.0 * i)];
        var count = 0;
        while (RateRise.LogEvidence([.. before, .. Enumerable.Range(1, count).Select(i => 50_000 + (250.0 * i))], 50_000 + (250.0 * Math.Max(1, count))) < Math.Log(2_100)) count++;
        count.Should().BeLessThanOrEqualTo(8);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused()
    {
        FluentActions.Invoking(() => RateRise.LogEvidence([-1], 5)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => RateRise.LogEvidence([5, 4], 9)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => RateRise.LogEvidence([5], 4)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => RateRise.LogEvidence([0], 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => RateRise.LogEvidence([double.NaN], 4)).Should().Throw<ArgumentOutOfRangeException>();
        RateRise.LogEvidence([], 0).Should().Be(0);
    }
}
