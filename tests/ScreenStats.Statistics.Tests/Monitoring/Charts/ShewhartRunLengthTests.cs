using ScreenStats.Statistics.Monitoring.Charts;

namespace ScreenStats.Statistics.Tests.Monitoring.Charts;

public sealed class ShewhartRunLengthTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("shewhart-run-lengths"), row =>
    [
        row.Mismatch("length", ShewhartRunLength.Proportion(
            row.Count("trials"), row.Number("centre"), row.Number("rate"), row.Text("limits") == "exact" ? ChartLimits.Probability : ChartLimits.ThreeSigma,
            row.Text("sides") == "upper", ChartRows.Or(row, "tail", 0.00135)).Value),
    ]);

    [Fact]
    public void With_exact_limits_false_alarms_are_at_most_as_frequent_as_stated() =>
        Gen.Select(Gen.Long[1, 100_000], Gen.Double[0.0001, 0.9999], Gen.Double[0.0001, 0.1]).Sample((n, p, tail) =>
        {
            var length = ShewhartRunLength.Proportion(n, p, p, tailProbability: tail);
            return length.Value is { } value ? value >= 0.5 / tail * (1 - 1e-9) : length.Reason == UndefinedReason.NeverSignals;
        });

    [Fact]
    public void Where_no_point_can_lie_outside_it_is_undefined()
    {
        ShewhartRunLength.Proportion(50, 0.1, 0, upperOnly: true).Reason.Should().Be(UndefinedReason.NeverSignals);
        ShewhartRunLength.Proportion(1, 0.5, 0.5).Reason.Should().Be(UndefinedReason.NeverSignals);
        ShewhartRunLength.Proportion(50, 0.1, 1).Value.Should().Be(1);
    }

    [Fact]
    public void Figures_that_cannot_be_are_refused()
    {
        foreach (var act in new Action[]
        {
            () => ShewhartRunLength.Proportion(0, 0.1, 0.1), () => ShewhartRunLength.Proportion(9, 0, 0.1), () => ShewhartRunLength.Proportion(9, 0.1, 1.1),
            () => ShewhartRunLength.Proportion(9, 0.1, 0.1, ChartLimits.Widened), () => ShewhartRunLength.Proportion(9, 0.1, 0.1, tailProbability: 0.6),
        })
            act.Should().Throw<ArgumentOutOfRangeException>();
    }
}
