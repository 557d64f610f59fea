using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.MovingAverages;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Tests.Monitoring.Charts;

public sealed class ControlChartTests
{
    private static readonly Subgroup[] Three = [new(3, 50), new(0, 40), new(5, 60)];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("control-charts"), row =>
    {
        var chart = ChartRows.Chart(row);
        var point = chart.Points[(int)row.Count("point") - 1];
        return
        [
            row.Mismatch("observed", point.Observed), row.Mismatch("value", point.Value), row.Mismatch("centre_line", point.Centre),
            row.Mismatch("lower", point.Lower), row.Mismatch("upper", point.Upper),
            row.Mismatch("expected_lower", point.Lower * point.Trials), row.Mismatch("expected_upper", point.Upper * point.Trials),
            row.Mismatch("fewest", point.FewestInside), row.Mismatch("most", point.MostInside), row.Mismatch("widening", chart.Widening),
            ChartRows.OutsideMismatch(row, chart),
        ];
    });

    // R 4.2.2 pbinom at the proportions of NIST e-Handbook 6.3.3.2, printed to 12 decimals.
    [Theory]
    [InlineData(347, 1500, 4, 21, 0.001280200072, 0.000892990537)]
    [InlineData(301, 1400, 3, 20, 0.000590446612, 0.000883244673)]
    [InlineData(133, 1200, 0, 13, 0, 0.000811294594)]
    public void The_chances_outside_exact_limits_are_those_of_the_binomial(long events, long trials, long fewest, long most, double below, double above)
    {
        var p = (double)events / trials;
        CountLimits.BinomialInside(50, p, 0.00135).Should().Be((fewest, most));
        CountLimits.BinomialOrLess(fewest - 1, 50, p).Should().BeApproximately(below, 6e-13);
        CountLimits.BinomialOrMore(most + 1, 50, p).Should().BeApproximately(above, 6e-13);
    }

    [Fact]
    public void The_step_between_the_two_periods_of_the_handbook_is_seven_standard_errors()
    {
        // Printed 7.10 (Montgomery, from memory); R 4.2.2: 7.100615415.
        var test = RaoScott.Naive([(1400, 301)], [(1200, 133)]);
        Math.Sqrt(test.ChiSquare!.Value).Should().BeApproximately(7.100615415, 6e-10);
    }

    [Fact]
    public void With_exact_limits_a_point_lies_outside_with_the_stated_chance_at_most_and_one_count_less_would_be_more() =>
        Gen.Select(Gen.Int[1, 300], Gen.Double[0.0005, 0.9995], Gen.Double[0.0001, 0.2]).Sample((n, p, tail) =>
        {
            var point = ProportionChart.Exact([new Subgroup(0, n)], p, tail).Points[0];
            double above = 0, below = 0, atMost = 0, atFewest = 0;
            for (long x = 0; x <= n; x++)
            {
                var chance = Chance(x, n, p);
                if (x > point.MostInside) above += chance;
                if (x < point.FewestInside) below += chance;
                if (x == point.MostInside) atMost = chance;
                if (x == point.FewestInside) atFewest = chance;
            }

            return above <= tail * (1 + 1e-9) && below <= tail * (1 + 1e-9)
                && (point.MostInside == 0 || above + atMost > tail * (1 - 1e-9)) && below + atFewest >= tail * (1 - 1e-9);
        });

    [Fact]
    public void Events_and_other_trials_signal_at_the_same_points_on_opposite_sides() => ChartRows.Any.Sample(points =>
    {
        Subgroup[] mirrored = [.. points.Select(point => new Subgroup(point.Trials - point.Events, point.Trials))];
        foreach (var (one, other) in new[]
        {
            (ProportionChart.ThreeSigma(points, rules: RunRules.All), ProportionChart.ThreeSigma(mirrored, rules: RunRules.All)),
            (OverdispersedChart.Of(points), OverdispersedChart.Of(mirrored)),
            (MovingAverageChart.Proportions(points), MovingAverageChart.Proportions(mirrored)),
        })
        {
            for (var i = 0; i < points.Length; i++)
            {
                var (a, b) = (one.Points[i], other.Points[i]);
                if ((a.Score is null) != (b.Score is null)) return false;
                if (a.Score is { } score && (Math.Abs(score + b.Score!.Value) > 1e-6 || Math.Abs(a.Upper!.Value - 1 + b.Lower!.Value) > 1e-9)) return false;
            }
        }

        return true;
    });

    [Fact]
    public void An_average_with_weight_one_is_the_chart_of_the_points_themselves() => ChartRows.Any.Sample(points =>
    {
        var (average, plain) = (MovingAverageChart.Proportions(points, weight: 1, width: 3), ProportionChart.ThreeSigma(points));
        return average.Points.Zip(plain.Points).All(pair => Near(pair.First.Value, pair.Second.Value) && Near(pair.First.Upper, pair.Second.Upper) && Near(pair.First.Lower, pair.Second.Lower));
    });

    [Fact]
    public void Every_figure_is_finite_or_has_a_reason() => ChartRows.Any.Sample(points =>
    {
        foreach (var chart in new[]
        {
            ProportionChart.Exact(points, rules: RunRules.All), ProportionChart.ThreeSigma(points), ProportionChart.Regression(points), OverdispersedChart.Of(points),
            ProportionChart.Suited(points), MovingAverageChart.Proportions(points), CountChart.Exact(points.Select(point => point.Events)), CountChart.ThreeSigma(points.Select(point => point.Events)),
        })
        {
            foreach (var point in chart.Points)
            {
                double?[] figures = [point.Value, point.Centre, point.Lower, point.Upper, point.Score];
                if (figures.Any(figure => figure is { } value && !double.IsFinite(value))) return false;
                if (figures.Any(figure => figure is null) != (point.Reason is not null)) return false;
                if (point.Lower > point.Upper) return false;
            }
        }

        return true;
    });

    [Fact]
    public void A_point_without_trials_has_no_value_and_is_passed_over()
    {
        Subgroup[] with = [new(3, 50), new(0, 0), new(0, 40), new(5, 60)];
        foreach (var (gap, none) in new[]
        {
            (ProportionChart.Exact(with), ProportionChart.Exact(Three)), (OverdispersedChart.Of(with), OverdispersedChart.Of(Three)),
            (MovingAverageChart.Proportions(with), MovingAverageChart.Proportions(Three)),
        })
        {
            gap.Points[1].Value.Should().BeNull();
            gap.Points[1].Reason.Should().Be(UndefinedReason.NoTrials);
            gap.Reason.Should().BeNull();
            gap.Points.Where(point => point.Index != 1).Select(point => (point.Value, point.Lower, point.Upper))
                .Should().Equal(none.Points.Select(point => (point.Value, point.Lower, point.Upper)));
        }
    }

    [Fact]
    public void What_has_no_limits_says_why()
    {
        foreach (var make in new Func<Subgroup[], double?, ControlChart>[]
        {
            (points, centre) => ProportionChart.Exact(points, centre), (points, centre) => ProportionChart.ThreeSigma(points, centre),
            (points, centre) => ProportionChart.Regression(points, centre), (points, centre) => OverdispersedChart.Of(points, centre),
            (points, centre) => MovingAverageChart.Proportions(points, centre),
        })
        {
            make([], null).Reason.Should().Be(UndefinedReason.NoTrials);
            make([new(0, 0), new(0, 0)], null).Reason.Should().Be(UndefinedReason.NoTrials);
            make([new(2, 10)], null).Reason.Should().Be(UndefinedReason.FewerThanTwoPoints);
            make([new(0, 10), new(0, 20)], null).Reason.Should().Be(UndefinedReason.NoEvents);
            make([new(10, 10), new(20, 20)], null).Reason.Should().Be(UndefinedReason.OnlyEvents);
            make([new(1, 10), new(2, 20)], 0).Reason.Should().Be(UndefinedReason.CentreAtTheEdge);
            var undefined = make([new(1, 10), new(2, 20)], 1);
            undefined.Points.Should().OnlyContain(point => point.Value != null && point.Upper == null && point.Reason == UndefinedReason.CentreAtTheEdge);
        }

        OverdispersedChart.Of([new(1, 10), new(1, 10)]).Reason.Should().Be(UndefinedReason.PointsAllAlike);
        CountChart.Exact([]).Reason.Should().Be(UndefinedReason.NoPoints);
        CountChart.Exact([0, 0]).Reason.Should().Be(UndefinedReason.NoEvents);
        CountChart.ThreeSigma([4]).Reason.Should().Be(UndefinedReason.FewerThanTwoPoints);
        CountChart.ThreeSigma([4], 0).Reason.Should().Be(UndefinedReason.CentreAtTheEdge);
        MovingAverageChart.Values([], 0, 1).Reason.Should().Be(UndefinedReason.NoPoints);
    }

    [Fact]
    public void One_point_is_enough_where_the_centre_is_given() =>
        ProportionChart.Exact([new Subgroup(9, 50)], 0.05).Signals.Should().Equal(new ChartSignal(0, RunRule.OutsideLimits, ChartSide.Above));

    [Fact]
    public void A_single_refuted_positive_among_a_few_tests_of_a_rare_kind_is_outside_three_sigma_limits_and_inside_exact_ones()
    {
        // 1 of 10 at a rate of 1 %: three standard errors end at 0.104; at 0.5 % at 0.072, though one such day in twenty has an event.
        ProportionChart.ThreeSigma([new Subgroup(1, 10)], 0.005).Signals.Should().HaveCount(1);
        ProportionChart.Exact([new Subgroup(1, 10)], 0.005).Signals.Should().BeEmpty();
    }

    [Fact]
    public void Days_without_an_event_are_no_run_where_most_days_have_none()
    {
        var days = Enumerable.Repeat(new Subgroup(0, 20), 40).ToArray();
        ProportionChart.Exact(days, 0.005, rules: RunRules.All).Signals.Should().BeEmpty();
        ProportionChart.ThreeSigma(days, 0.005, RunRules.All).Signals.Should().NotBeEmpty("the distance says that they are all below");
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void A_centre_outside_of_0_to_1_is_refused(double centre) =>
        new Action(() => ProportionChart.Exact(Three, centre)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName(nameof(centre));

    [Fact]
    public void Other_figures_that_cannot_be_are_refused()
    {
        foreach (var act in new Action[]
        {
            () => ProportionChart.Exact(Three, tailProbability: 0), () => ProportionChart.Exact(Three, tailProbability: 0.5), () => ProportionChart.Exact(Three, rules: [(RunRule)9]),
            () => OverdispersedChart.Of(Three, divisor: 0), () => MovingAverageChart.Proportions(Three, weight: 0), () => MovingAverageChart.Proportions(Three, weight: 1.1),
            () => MovingAverageChart.Proportions(Three, width: double.NaN), () => MovingAverageChart.Values([double.NaN], 0, 1), () => MovingAverageChart.Values([1], 0, 0),
            () => CountChart.Exact([-1]), () => CountChart.Exact([1], -1), () => _ = new Subgroup(2, 1), () => _ = new Subgroup(0, -1),
        })
            act.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Ten_million_trials_at_a_point_are_no_trouble()
    {
        var point = ProportionChart.Exact([new Subgroup(1200, 10_000_000)], 1e-4).Points[0];
        point.FewestInside.Should().BeInRange(900, 910);
        point.MostInside.Should().BeInRange(1090, 1100);
        point.Score.Should().BeApproximately(6.1, 0.3);
    }

    private static bool Near(double? one, double? other) =>
        one is null ? other is null : other is { } value && Math.Abs(one.Value - value) <= 1e-12;

    private static double Chance(long x, long n, double p)
    {
        var log = (x * Math.Log(p)) + ((n - x) * Math.Log(1 - p));
        for (long i = 1; i <= x; i++) log += Math.Log((double)(n - x + i) / i);
        return Math.Exp(log);
    }
}
