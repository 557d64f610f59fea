using ScreenStats.Statistics.Planning;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Planning;

public sealed class SampleSizeTests
{
    [Fact]
    public void Every_row_of_the_width_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("plans-width"), row =>
    {
        var plan = SampleSize.ForWidth(row.Number("proportion"), row.Number("width"), row.Number("confidence"), row.Number("design_effect"));
        plan.Tests.Should().Be(row.Count("tests"), row.ToString());
        return [row.Mismatch("achieved", plan.Achieved)];
    });

    [Fact]
    public void Every_row_of_the_zero_events_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("plans-zero-events"), row =>
    {
        var plan = SampleSize.ForZeroEvents(row.Number("rate"), row.Number("confidence"), row.Number("design_effect"));
        plan.Tests.Should().Be(row.Count("tests"), row.ToString());
        return [row.Mismatch("achieved", plan.Achieved), row.Mismatch("upper", plan.UpperLimit)];
    });

    [Fact]
    public void One_test_fewer_is_too_wide_and_the_answer_is_not() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.0005, 0.9], Gen.Double[0.5, 0.999], Gen.Double[1, 9]).Sample((p, width, confidence, effect) =>
        {
            var plan = SampleSize.ForWidth(p, width, confidence, effect);
            return plan.Achieved <= width && (plan.WidthWithOneFewer is null or > 0 && (plan.WidthWithOneFewer ?? 1) > width);
        });

    [Fact]
    public void The_width_is_that_of_the_interval_itself_where_the_expected_count_is_whole()
    {
        var plan = SampleSize.ForWidth(0.5, 0.1);
        plan.Tests.Should().Be(381);
        SampleSize.ForWidth(0.5, ProportionInterval.Wilson(50, 100).Interval!.Value.Width * (1 + 1e-12)).Tests.Should().Be(100);
    }

    [Fact]
    public void One_test_fewer_does_not_rule_the_rate_out() =>
        Gen.Select(Gen.Double[-6, -0.05].Select(e => Math.Pow(10, e)), Gen.Double[0.51, 0.9999], Gen.Double[1, 9]).Sample((rate, confidence, effect) =>
        {
            var plan = SampleSize.ForZeroEvents(rate, confidence, effect);
            return plan.Achieved >= confidence - 1e-12 && (plan.ConfidenceWithOneFewer is null || plan.ConfidenceWithOneFewer < confidence)
                && plan.UpperLimit <= rate * (1 + 1e-9);
        });

    [Fact]
    public void A_design_effect_multiplies_the_tests() =>
        SampleSize.ForZeroEvents(0.01, 0.95, 2).Tests.Should().Be(597, "ceil(2 ln 0.05 / ln 0.99) with ln 0.05 / ln 0.99 = 298.073");

    [Fact]
    public void What_no_number_reaches_is_undefined_with_its_reason()
    {
        SampleSize.ForWidth(0.5, 1e-9).Reason.Should().Be(UndefinedReason.NoSampleLargeEnough);
        SampleSize.ForWidth(0.5, 1e-9).Achieved.Should().BeNull();
        SampleSize.ForZeroEvents(1e-13).Reason.Should().Be(UndefinedReason.NoSampleLargeEnough);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => SampleSize.ForWidth(1.2, 0.1), "proportion"), (() => SampleSize.ForWidth(0.1, 0), "width"), (() => SampleSize.ForWidth(0.1, 1), "width"),
            (() => SampleSize.ForWidth(0.1, 0.1, 1), "confidence"), (() => SampleSize.ForWidth(0.1, 0.1, 0.95, 0.5), "designEffect"),
            (() => SampleSize.ForZeroEvents(0), "rate"), (() => SampleSize.ForZeroEvents(1), "rate"), (() => SampleSize.ForZeroEvents(double.NaN), "rate"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }
}
