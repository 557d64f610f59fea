using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Cadence;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Tests.Charts;

public class GapChartTests
{
    private static readonly ChartFrame Frame = new("gaps", "Title", "See.", "Described.", "participation");

    private static readonly ImmutableArray<GapShare> Gaps = [new(2, 0.5), new(3, 0.3), new(7, 0.1), new(40, 0.06), new(90, 0.04)];

    [Fact]
    public void Each_gap_is_a_bar_and_the_longest_are_one_together()
    {
        var chart = GapChart.Of(Frame, Gaps, 2.33);
        var bars = chart.Marks.OfType<LineMark>().Where(line => !line.Dashed).ToArray();

        bars.Select(bar => bar.Points[0].X).Should().Equal(2, 3, 7, GapChart.MostDays + 1);
        bars[^1].Points[1].Y.Should().BeApproximately(0.1, 1e-12);
        bars.Sum(bar => bar.Points[1].Y).Should().BeApproximately(1, 1e-12);
        chart.Horizontal.Ticks[^1].Label.Should().Be("longer");
        chart.Caption.Text.Should().Contain("all gaps of more than 21 days together");
    }

    [Fact]
    public void The_plan_is_a_dashed_line_with_its_words()
    {
        GapChart.Of(Frame, Gaps, 2.33).Marks.OfType<LineMark>().Single(line => line.Dashed).Points[0].X.Should().Be(2.33);
        GapChart.Of(Frame, Gaps, 2.33).Marks.OfType<LabelMark>().Single().Text.Should().Be("planned: 2.3 days on average");
        GapChart.Of(Frame, Gaps, null).Marks.OfType<LabelMark>().Should().BeEmpty();
        GapChart.Of(Frame, Gaps, 400).Marks.OfType<LabelMark>().Should().BeEmpty("a plan beyond the picture has no place in it");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(9)]
    [InlineData(30)]
    public void Labels_of_days_are_few_and_within_the_axis(int longest)
    {
        var chart = GapChart.Of(Frame, [.. Enumerable.Range(1, longest).Select(day => new GapShare(day, 1.0 / longest))], null);

        chart.Horizontal.Ticks.Length.Should().BeInRange(3, 9);
        chart.Horizontal.Ticks.Should().OnlyContain(tick => tick.Position > chart.Horizontal.From && tick.Position < chart.Horizontal.To);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(GapChart.Of(Frame, Gaps, 2.33)))).Distinct().Should().ContainSingle();
}
