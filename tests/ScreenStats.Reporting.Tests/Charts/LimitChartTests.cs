using System.Collections.Immutable;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Tests.Charts;

public class LimitChartTests
{
    private static readonly ChartFrame Frame = new("id", "Title", "See.", "Described.", "table");

    [Fact]
    public void Limits_are_steps_as_wide_as_their_period_and_do_not_bridge_a_gap()
    {
        var chart = LimitChart.OverTime(Frame, [Week(0, 0.01), Week(1, 0.012) with { Upper = 0.03 }, Week(5, 0.01)], 0.01, "whole span", ("week", "weeks"));

        var bands = chart.Marks.OfType<BandMark>().ToArray();
        bands.Should().HaveCount(2);
        var day = new DateOnly(2026, 1, 5).DayNumber;
        bands[0].Points.Select(point => (point.X, point.Upper)).Should().Equal((day, 0.02), (day + 7, 0.02), (day + 7, 0.03), (day + 14, 0.03));
        chart.Marks.OfType<RuleMark>().Should().ContainSingle().Which.At.Should().Be(0.01);
        chart.Marks.OfType<LabelMark>().Should().ContainSingle().Which.Text.Should().Be("dashed: whole span 1.00 %; band: limits");
        chart.Caption.Text.Should().Be("See. Band: where chance alone puts a week of its size.");
    }

    [Fact]
    public void Points_outside_have_a_shape_and_a_word_of_their_own_once_for_a_row_of_them()
    {
        var chart = LimitChart.OverTime(
            Frame, [Week(0, 0.05, outside: true), Week(1, 0.06, outside: true), Week(2, 0.01), Week(3, 0.001, outside: true) with { Lower = 0.005 }], 0.01, "whole span", ("week", "weeks"));

        chart.Marks.OfType<DotMark>().Select(dot => dot.Shape).Should().Equal(DotShape.Diamond, DotShape.Diamond, DotShape.Filled, DotShape.Diamond);
        chart.Marks.OfType<LabelMark>().Where(label => label.Strong).Select(label => (label.Text, label.Y)).Should().Equal(("2 weeks above", 0.06), ("below", 0.001));
        chart.Caption.Text.Should().Contain("Diamond and word: outside.");
    }

    [Fact]
    public void What_is_incomplete_or_ends_a_row_has_a_shape_and_the_caption_says_so()
    {
        var chart = LimitChart.OverTime(Frame, [Week(0, 0.01) with { InPattern = true }, Week(1, 0.01) with { Incomplete = true }], 0.01, "whole span", ("week", "weeks"));

        chart.Marks.OfType<DotMark>().Select(dot => dot.Shape).Should().Equal(DotShape.Square, DotShape.Hollow);
        chart.Caption.Text.Should().EndWith("Square: inside, but ends a row such as chance seldom makes. Hollow: not complete yet.");
    }

    [Fact]
    public void Levels_side_by_side_each_have_a_bar_of_limits_and_those_outside_come_first_where_there_are_too_many()
    {
        var points = Enumerable.Range(0, 100).Select(index => Level($"L{index:00}", index == 99 ? 0.2 : 0.01 + (index * 0.00001), index == 99)).ToImmutableArray();
        var chart = LimitChart.SideBySide(Frame, points, 0.01, "all together");

        chart.Marks.OfType<BarMark>().Should().HaveCount(LevelChart.Most);
        chart.Marks.OfType<LabelMark>().Should().ContainSingle(label => label.Text == "above").Which.X.Should().Be(0.2);
        chart.Vertical.Ticks.Should().Contain(tick => tick.Label == "L99");
        chart.Caption.Text.Should().EndWith("Shown are 40 of 100, those outside first; the table has all.");
    }

    [Fact]
    public void Far_limits_of_a_small_point_do_not_flatten_the_others()
    {
        var chart = LimitChart.OverTime(Frame, [Week(0, 0.01), Week(1, 0) with { Upper = 1 }], 0.01, "whole span", ("week", "weeks"));

        chart.Vertical.To.Should().BeLessThan(0.04);
        chart.Marks.OfType<BandMark>().Single().Points.Max(point => point.Upper).Should().BeLessThan(chart.Vertical.To);
    }

    private static LimitPoint Week(int week, double value, bool outside = false)
    {
        var start = new DateOnly(2026, 1, 5).AddDays(week * 7);
        return new LimitPoint("", start, start.AddDays(7), value, 0, 0.02, outside);
    }

    private static LimitPoint Level(string name, double value, bool outside) => new(name, default, default, value, 0, 0.02, outside);
}
