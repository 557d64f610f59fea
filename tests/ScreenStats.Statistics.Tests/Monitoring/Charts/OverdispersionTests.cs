using ScreenStats.Statistics.Monitoring.Charts;

namespace ScreenStats.Statistics.Tests.Monitoring.Charts;

public sealed class OverdispersionTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("overdispersion"), row =>
    {
        var (statistic, p, _) = Overdispersion.Dispersion(ChartRows.Subgroups(row));
        return [row.Mismatch("statistic", statistic), row.Mismatch("p_value", p)];
    });

    [Fact]
    public void Days_that_differ_all_over_demand_the_widened_chart()
    {
        var random = new Random(1);
        Subgroup[] days = [.. Enumerable.Range(0, 40).Select(_ => new Subgroup(500 + random.Next(-150, 151), 10_000))];
        var chart = ProportionChart.Suited(days);
        chart.Limits.Should().Be(ChartLimits.Widened);
        chart.Overdispersion!.Demanded.Should().BeTrue();
        chart.Widening.Should().BeGreaterThan(2);
    }

    [Fact]
    public void A_few_bad_days_do_not_widen_the_limits_that_show_them()
    {
        Subgroup[] days = [.. Enumerable.Range(0, 40).Select(day => new Subgroup((day is 11 or 25 or 26 ? 120 : 50) + (day * 7 % 13) - 6, 1000))];
        var chart = ProportionChart.Suited(days);
        chart.Overdispersion!.PValue.Should().BeLessThan(Overdispersion.Level);
        chart.Overdispersion.Widening.Should().BeGreaterThan(1);
        chart.Limits.Should().Be(ChartLimits.Probability);
        chart.Signals.Select(signal => signal.Index).Should().Equal(11, 25, 26);
    }

    [Fact]
    public void Where_chance_alone_is_at_work_the_widened_chart_is_demanded_at_most_once_in_a_hundred()
    {
        var random = new Random(20260321);
        foreach (var (trials, rate) in new[] { (20, 0.02), (200, 0.01), (300, 0.2) })
        {
            var demanded = 0;
            for (var run = 0; run < 1000; run++)
            {
                var days = Enumerable.Range(0, 30).Select(_ =>
                {
                    long x = 0;
                    for (var i = 0; i < trials; i++) x += random.NextDouble() < rate ? 1 : 0;
                    return new Subgroup(x, trials);
                });
                if (Overdispersion.Check(days).Demanded) demanded++;
            }

            // 1 % and three standard errors.
            demanded.Should().BeLessThanOrEqualTo(19, "of 1000 with {0} trials at {1}", trials, rate);
        }
    }

    [Fact]
    public void What_cannot_be_told_says_why_and_demands_nothing()
    {
        Overdispersion.Check([]).Reason.Should().Be(UndefinedReason.NoTrials);
        Overdispersion.Check([new(1, 9)]).Reason.Should().Be(UndefinedReason.FewerThanTwoPoints);
        Overdispersion.Check([new(0, 9), new(0, 8)]).Reason.Should().Be(UndefinedReason.NoEvents);
        Overdispersion.Check([new(1, 1), new(0, 1), new(1, 1), new(0, 1)]).Should().Match<OverdispersionCheck>(check => !check.Demanded && check.Reason == UndefinedReason.OneTrialInEachCluster);
        Overdispersion.Check([new(1, 9), new(1, 9)], 0.2).Demanded.Should().BeFalse();
    }
}
