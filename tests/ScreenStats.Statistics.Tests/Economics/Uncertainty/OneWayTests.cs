using ScreenStats.Statistics.Economics.Uncertainty.OneWay;

namespace ScreenStats.Statistics.Tests.Economics.Uncertainty;

public sealed class OneWayTests
{
    [Fact]
    public void Every_row_of_the_swings_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("one-way-swings"), row =>
    {
        var parameters = row.Words("parameters").Select(word => word.Split(':').Select(Lists.Number).ToArray()).Select(part => new ParameterRange(part[0], part[1], part[2])).ToArray();
        var (weights, product) = (row.Numbers("weights"), row.Number("product"));
        var swings = OneWayAnalysis.Of(parameters, values => values.Zip(weights, (value, weight) => value * weight).Sum() + values.Aggregate(product, (sum, value) => sum * value));
        return
        [
            row.Same("order", string.Join(' ', swings.Select(swing => swing.Index))),
            .. row.Differences("at_lower", [.. swings.Select(swing => swing.AtLower)]), .. row.Differences("at_upper", [.. swings.Select(swing => swing.AtUpper)]),
        ];
    });

    [Fact]
    public void Swings_fall_and_those_without_one_come_last()
    {
        ParameterRange[] parameters = [new(1, 0, 2), new(1, 1, 1), new(4, 2, 9), new(0, -1, 1)];
        var swings = OneWayAnalysis.Of(parameters, values => values[3] < 0 ? null : values[3] > 0 ? double.NaN : values[0] + values[2]);
        swings.Select(swing => swing.Index).Should().Equal(2, 0, 1, 3);
        swings[0].Swing.Should().Be(7);
        swings[2].Swing.Should().Be(0);
        swings[3].Swing.Should().BeNull();
        swings[3].AtUpper.Should().BeNull("a figure that is no number is none");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new ParameterRange(1, 2, 3), "lower"), (() => _ = new ParameterRange(4, 2, 3), "upper"), (() => _ = new ParameterRange(double.NaN, 2, 3), "value"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }
}
