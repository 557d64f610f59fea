using ScreenStats.Statistics.Monitoring.MovingAverages;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Tests.Monitoring.MovingAverages;

public sealed class MovingAverageRunLengthTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("moving-average-run-lengths"), row =>
        [row.Mismatch("length", MovingAverageRunLength.Normal(row.Number("weight"), row.Number("width"), row.Number("shift")).Value)]);

    [Fact]
    public void With_weight_one_it_is_the_run_length_of_single_points() => Gen.Double[-3, 3].Sample(
        shift =>
        {
            var single = RunRuleLength.Normal([RunRule.OutsideLimits], shift).Value!.Value;
            return Math.Abs(MovingAverageRunLength.Normal(1, 3, shift).Value!.Value - single) < 1e-9 * single;
        },
        iter: 30);

    [Theory]
    [InlineData(0.2, 2.962, 0.5)]
    [InlineData(0.05, 2.615, 0.25)]
    [InlineData(0.4, 2.5, 0)]
    public void A_seeded_simulation_of_charts_agrees_within_three_standard_errors(double weight, double width, double shift)
    {
        const int Runs = 2000;
        var random = new Random(20260317);
        double sum = 0, squares = 0;
        for (var run = 0; run < Runs; run++)
        {
            var values = new List<double>();
            int? first = null;
            for (var size = 100; first is null; size *= 4)
            {
                while (values.Count < size) values.Add(shift + (Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())));
                var chart = MovingAverageChart.Values(values, 0, 1, weight, width, steady: true);
                if (chart.Signals.Length > 0) first = chart.Signals[0].Index + 1;
            }

            sum += first.Value;
            squares += (double)first.Value * first.Value;
        }

        var mean = sum / Runs;
        var error = Math.Sqrt(((squares / Runs) - (mean * mean)) / Runs);
        Math.Abs(MovingAverageRunLength.Normal(weight, width, shift).Value!.Value - mean).Should().BeLessThan(3 * error);
    }

    [Fact]
    public void Figures_that_cannot_be_are_refused()
    {
        foreach (var act in new Action[]
        {
            () => MovingAverageRunLength.Normal(0, 3), () => MovingAverageRunLength.Normal(0.0009, 3), () => MovingAverageRunLength.Normal(1.1, 3),
            () => MovingAverageRunLength.Normal(0.2, 0), () => MovingAverageRunLength.Normal(0.2, 6.1), () => MovingAverageRunLength.Normal(0.2, 3, double.PositiveInfinity),
        })
            act.Should().Throw<ArgumentOutOfRangeException>();
    }
}
