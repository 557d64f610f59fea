using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.RareEvents;
using ScreenStats.Statistics.Monitoring.Runs;
using ScreenStats.Statistics.Tests.Monitoring.Charts;

namespace ScreenStats.Statistics.Tests.Monitoring.RareEvents;

public sealed class RareEventChartTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("rare-event-charts"), row =>
    {
        var method = row.Text("method");
        var chart = Chart(row);
        var point = chart.Points[(int)row.Count("point") - 1];

        // The rows on the transformed scale are held against the limits raised to the power again.
        var power = method is "t-transformed-scale" or "t-transformed-value" ? row.Number("power") : 1;
        return
        [
            row.Mismatch("value", Raised(point.Value, power)), row.Mismatch("centre_line", Raised(point.Centre, power)), row.Mismatch("lower", Raised(point.Lower, power)),
            row.Mismatch("upper", Raised(point.Upper, power)), row.Has("chance_above") ? row.Mismatch("chance_above", Math.Pow(1 - row.Number("rate"), Math.Floor(point.Upper!.Value) + 1)) : null,
            ChartRows.OutsideMismatch(row, chart),
        ];
    });

    [Fact]
    public void Gap_limits_leave_the_stated_chance_at_most_and_are_the_tightest() => Gen.Select(Gen.Double[1e-7, 0.99], Gen.Double[1e-5, 0.4]).Sample((p, tail) =>
    {
        var point = GapChart.Probability([1, 2], p, tail).Points[0];
        double Above(long x) => Math.Pow(1 - p, x + 1);
        double Below(long x) => x <= 0 ? 0 : 1 - Math.Pow(1 - p, x);
        const double Slack = 1e-6;
        return Above(point.MostInside!.Value) <= tail * (1 + Slack) && (point.MostInside == 0 || Above(point.MostInside.Value - 1) > tail * (1 - Slack))
            && Below(point.FewestInside!.Value) < tail * (1 + Slack) && Below(point.FewestInside.Value + 1) >= tail * (1 - Slack);
    });

    [Fact]
    public void Stretching_the_unit_of_time_stretches_the_chart() => Gen.Select(Gen.Double[0.1, 50].Array[3, 20], Gen.Double[0.01, 100]).Sample((times, unit) =>
    {
        foreach (var (one, other) in new[]
        {
            (TimeChart.Probability(times, rules: RunRules.All), TimeChart.Probability(times.Select(time => time * unit), rules: RunRules.All)),
            (TimeChart.PowerTransform(times), TimeChart.PowerTransform(times.Select(time => time * unit))),
        })
        {
            if (one.Points.Zip(other.Points).Any(pair => Math.Abs((pair.First.Upper!.Value * unit / pair.Second.Upper!.Value) - 1) > 1e-9 || Math.Abs(pair.First.Score!.Value - pair.Second.Score!.Value) > 1e-6)) return false;
        }

        return true;
    });

    [Fact]
    public void Short_gaps_signal_by_their_run_where_none_can_alone()
    {
        var chart = GapChart.Probability([120, 40, 0, 1, 0], 0.01, rules: RunRules.All);
        chart.Points[2].FewestInside.Should().Be(0);
        chart.Signals.Should().Contain(new ChartSignal(3, RunRule.TwoOfThreeFar, ChartSide.Below)).And.NotContain(signal => signal.Rule == RunRule.OutsideLimits);
    }

    [Fact]
    public void What_has_no_limits_says_why()
    {
        GapChart.Probability([]).Reason.Should().Be(UndefinedReason.NoEvents);
        GapChart.Probability([], 0.1).Reason.Should().Be(UndefinedReason.NoEvents);
        GapChart.Probability([5]).Reason.Should().Be(UndefinedReason.FewerThanTwoPoints);
        GapChart.ThreeSigma([0, 0]).Reason.Should().Be(UndefinedReason.OnlyEvents);
        TimeChart.Probability([]).Reason.Should().Be(UndefinedReason.NoEvents);
        TimeChart.Probability([5]).Reason.Should().Be(UndefinedReason.FewerThanTwoPoints);
        TimeChart.Probability([0, 0]).Reason.Should().Be(UndefinedReason.PointsAllAlike);
        TimeChart.PowerTransform([4, 4, 4]).Reason.Should().Be(UndefinedReason.PointsAllAlike);
        TimeChart.Probability([5], 4).Reason.Should().BeNull();
    }

    [Fact]
    public void Figures_that_cannot_be_are_refused()
    {
        foreach (var act in new Action[]
        {
            () => GapChart.Probability([-1]), () => GapChart.Probability([1, 2], 0), () => GapChart.Probability([1, 2], 1), () => GapChart.Probability([1, 2], tailProbability: 0.5),
            () => TimeChart.Probability([-1]), () => TimeChart.Probability([double.NaN]), () => TimeChart.Probability([1, 2], 0), () => TimeChart.PowerTransform([1, 2], power: 0),
            () => TimeChart.PowerTransform([1, 2], divisor: -1),
        })
            act.Should().Throw<ArgumentOutOfRangeException>();
    }

    private static double? Raised(double? value, double power) => value is { } time && power != 1 ? Math.Pow(time, power) : value;

    private static ControlChart Chart(ReferenceRow row)
    {
        var values = row.Numbers("values");
        return row.Text("method") switch
        {
            "g-probability" => GapChart.Probability(values.Select(x => (long)x), ChartRows.Optional(row, "rate"), ChartRows.Or(row, "tail", 0.00135)),
            "g-three-sigma" => GapChart.ThreeSigma(values.Select(x => (long)x), ChartRows.Optional(row, "rate")),
            "t-probability" => TimeChart.Probability(values, ChartRows.Optional(row, "mean"), ChartRows.Or(row, "tail", 0.00135)),
            _ => TimeChart.PowerTransform(values, row.Number("power"), ChartRows.Or(row, "divisor", OverdispersedChart.PrintedDivisor)),
        };
    }
}
