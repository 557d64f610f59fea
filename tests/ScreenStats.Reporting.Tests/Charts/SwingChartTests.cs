using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Cadence;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Tests.Charts;

public class SwingChartTests
{
    private static readonly ChartFrame Frame = new("swing", "Title", "See.", "Described.", "cadence-sensitivity");

    private static readonly ImmutableArray<SwingBar> Three = [new("Incidence", "12", "40", 80, 240), new("Days to isolation", "0.1", "0.5", 160, 120), new("Participation", "70 %", "90 %", 130, 150)];

    [Fact]
    public void Bars_stand_in_their_order_from_end_to_end_around_the_centre()
    {
        var chart = SwingChart.Of(Frame, Three, 140, "days");

        var bars = chart.Marks.OfType<BarMark>().ToArray();
        bars.Where(bar => bar.At > 2).Select(bar => (bar.From, bar.To)).Should().BeEquivalentTo([(80.0, 140.0), (140.0, 240.0)]);
        bars.Where(bar => bar.At is > 1 and < 2).Select(bar => (bar.From, bar.To, bar.Tone)).Should().BeEquivalentTo([(140.0, 160.0, Tone.Waiting), (120.0, 140.0, Tone.Main)], "the pale part is the lower end of the assumption, also where that gives more");
        Label(chart, "Incidence").Y.Should().BeGreaterThan(Label(chart, "Days to isolation").Y);
    }

    [Fact]
    public void Each_end_says_the_value_of_the_assumption_there()
    {
        var chart = SwingChart.Of(Frame, Three, 140, "days");

        (Label(chart, "lower end: 12").X, Label(chart, "lower end: 12").Side).Should().Be((80, LabelSide.Left));
        (Label(chart, "upper end: 40").X, Label(chart, "upper end: 40").Side).Should().Be((240, LabelSide.Right));
        (Label(chart, "0.5").X, Label(chart, "0.5").Side).Should().Be((120, LabelSide.Left), "more delay removes less");
        Label(chart, "0.1").X.Should().Be(160);
        Label(chart, "all at their centre").X.Should().Be(140, "the line is named where it stands");
    }

    [Fact]
    public void Words_at_both_ends_lie_within_the_picture()
    {
        var chart = SwingChart.Of(Frame, [new("A name of some length that nobody would cut", "0.0012: twice-weekly", "0.0045: every-second-day", 3, 900)], 300, "days");
        var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);

        area.Pixel(3, 0).X.Should().BeGreaterThan(ChartText.Measure("lower end: 0.0012: twice-weekly") + 8);
        area.Pixel(900, 0).X.Should().BeLessThan(Chart.Width - ChartText.Measure("upper end: 0.0045: every-second-day") - 8);
        chart.Horizontal.Ticks.Should().HaveCountGreaterThan(1).And.OnlyContain(tick => tick.Position >= 0);
    }

    [Fact]
    public void Of_many_the_first_are_drawn_and_the_rest_is_said()
    {
        var many = Enumerable.Range(0, 13).Select(index => new SwingBar($"assumption {index}", "1", "2", 100 - index, 101)).ToImmutableArray();
        var chart = SwingChart.Of(Frame, many, 100.5, "days");

        chart.Marks.OfType<LabelMark>().Count(label => label.Text.StartsWith("assumption", StringComparison.Ordinal)).Should().Be(SwingChart.Most);
        chart.Caption.Text.Should().EndWith("5 more, which do less, stand in the table.");
    }

    [Fact]
    public void Ends_on_one_side_of_the_centre_are_both_seen()
    {
        var chart = SwingChart.Of(Frame, [new("Bent", "1", "9", 60, 80)], 100, "days");

        chart.Marks.OfType<BarMark>().Select(bar => bar.From).Should().Equal([60, 80], "the farther one lies behind");
        Label(chart, "upper end: 9").X.Should().Be(100);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(SwingChart.Of(Frame, Three, 140, "days")))).Distinct().Should().ContainSingle();

    private static LabelMark Label(Chart chart, string text) => chart.Marks.OfType<LabelMark>().Single(label => label.Text == text);
}
