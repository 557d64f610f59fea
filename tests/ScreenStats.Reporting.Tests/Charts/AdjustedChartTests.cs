using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Comparisons;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Tests.Charts;

public class AdjustedChartTests
{
    private static readonly ChartFrame Frame = new("id", "Title", "See.", "Described.", "comparison");

    [Fact]
    public void Levels_stand_in_order_of_the_adjusted_share_whatever_the_raw_one_says()
    {
        var chart = AdjustedChart.Of(Frame, [Level("A", 0.06, 0.02), Level("B", 0.01, 0.03), Level("C", 0.02, 0.01)], 0.02, "sites");

        chart.Vertical.Ticks.Select(tick => (tick.Label, tick.Position)).Should().Equal(("B", 2), ("A", 1), ("C", 0));
        chart.Marks.OfType<DotMark>().Single(dot => dot is { Shape: DotShape.Hollow, X: 0.06 }).Y.Should().Be(1);
        chart.Marks.OfType<LineMark>().Where(line => line.Points[0].Y == 1 && line.Points.Length == 2).Should().ContainSingle().Which.Points.Select(point => point.X).Should().Equal(0.016, 0.024);
        chart.Caption.Text.Should().Contain("In order of the adjusted share");
    }

    [Fact]
    public void Of_too_many_the_outer_ones_are_drawn_and_the_rest_is_said()
    {
        var levels = Enumerable.Range(0, 1000).Select(index => Level($"S{index:000}", 0.02, 0.001 + (index * 0.00003))).ToImmutableArray();
        var chart = AdjustedChart.Of(Frame, levels, 0.02, "sites");

        chart.Vertical.Ticks.Should().HaveCount(AdjustedChart.Most);
        chart.Vertical.Ticks.Select(tick => tick.Label).Should().StartWith("S999").And.EndWith("S000");
        chart.Marks.OfType<LabelMark>().Should().Contain(label => label.Text == "… 970 more sites between these");
        chart.Caption.Text.Should().EndWith("Shown are the 15 highest and the 15 lowest of 1,000 sites; the table has all.");
        chart.Height.Should().BeLessThan(1000);
    }

    [Fact]
    public void A_raw_share_far_beyond_the_others_is_told_in_words()
    {
        var chart = AdjustedChart.Of(Frame, [Level("A", 0.02, 0.02), new AdjustedLevel("B", 3, 0.667, 0.025, 0.01, 0.05, LevelStanding.Within)], 0.02, "sites");

        chart.Horizontal.To.Should().BeLessThan(0.1);
        chart.Marks.OfType<LabelMark>().Should().Contain(label => label.Text == "raw 66.7 %, beyond");
    }

    [Fact]
    public void Standing_is_a_shape_and_the_first_row_says_what_its_marks_are()
    {
        var chart = AdjustedChart.Of(Frame, [Level("A", 0.05, 0.04) with { Standing = LevelStanding.Above }, Level("B", 0.02, 0.02)], null, "sites");

        chart.Marks.OfType<DotMark>().Where(dot => dot.Shape == DotShape.TriangleUp).Should().ContainSingle();
        chart.Caption.Text.Should().Contain("Triangle: outside the funnel's limits");
        var (adjusted, raw) = (chart.Marks.OfType<LabelMark>().Single(label => label.Text == "adjusted"), chart.Marks.OfType<LabelMark>().Single(label => label.Text == "raw"));
        (adjusted.X, adjusted.Y, adjusted.Side, raw.X, raw.Y, raw.Side).Should().Be((0.04, 1, LabelSide.AboveLeft, 0.05, 1, LabelSide.AboveRight), "words of neighbours go apart");
    }

    private static AdjustedLevel Level(string name, double raw, double adjusted) => new(name, 1000, raw, adjusted, adjusted * 0.8, adjusted * 1.2, LevelStanding.Within);
}
