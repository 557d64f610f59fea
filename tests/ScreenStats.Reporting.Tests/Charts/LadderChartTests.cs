using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Charts.Worth;

namespace ScreenStats.Reporting.Tests.Charts;

public class LadderChartTests
{
    private static readonly ChartFrame Frame = new("ladder", "Title", "See.", "Described.", "worth-ladder");

    private static readonly ImmutableArray<LadderRung> Usual = [new("no screening", 0, 2.4), new("weekly", 2.4, 4.1), new("twice-weekly", 4.1, 7.3), new("daily", 7.3, null)];

    private static readonly ImmutableArray<LadderLevel> Levels = [new("all days", 4.8, 3.1, 9.5), new("last 91 days", 6.2, 3.5, 12), new("last 28 days", 0.5, 0.1, 1.9)];

    [Fact]
    public void Each_option_has_a_bar_over_the_infections_for_which_it_gains_most_and_its_name_at_the_axis()
    {
        var chart = Chart(Usual, Levels);
        var bars = chart.Marks.OfType<BarMark>().ToArray();

        bars.Select(bar => (bar.From, bar.To)).Should().Equal((0, 2.4), (2.4, 4.1), (4.1, 7.3), (7.3, chart.Horizontal.To));
        bars.Select(bar => bar.At).Should().BeInAscendingOrder("it is a stair");
        bars.Select(bar => chart.Vertical.Ticks.Single(tick => tick.Position == bar.At).Label).Should().Equal("no screening", "weekly", "twice-weekly", "daily");
        bars.Select(bar => bar.Tone).Distinct().Should().ContainSingle("the place says it, not the colour");
        Words(chart).Should().Contain(["up to 2.4", "2.4 to 4.1", "4.1 to 7.3", "from 7.3"]);
    }

    [Fact]
    public void Each_level_has_its_limits_below_the_stair_and_a_line_up_through_it()
    {
        var chart = Chart(Usual, Levels);

        foreach (var level in Levels)
        {
            var mark = chart.Marks.OfType<IntervalMark>().Single(mark => mark.Estimate == level.Estimate);
            (mark.Lower, mark.Upper, mark.Cut).Should().Be((level.Lower, level.Upper, false));
            chart.Vertical.Ticks.Single(tick => tick.Position == mark.At).Label.Should().Be(level.Name);
            mark.At.Should().BeLessThan(chart.Marks.OfType<BarMark>().Min(bar => bar.At));
            var line = chart.Marks.OfType<LineMark>().Single(line => line.Points[0].X == level.Estimate);
            line.Dashed.Should().BeFalse("dashed lines are drawn last, over words and bars");
            line.Points.Max(point => point.Y).Should().BeGreaterThan(chart.Marks.OfType<BarMark>().Max(bar => bar.At));
            Words(chart).Should().Contain(Print(level.Estimate));
        }
    }

    [Fact]
    public void Limits_and_options_far_beyond_every_level_are_cut_at_the_edge_and_that_is_said()
    {
        var chart = Chart([.. Usual[..3], new("daily", 7.3, 900), new("twice a day", 900, null)], [new("all days", 4.8, 3.1, 400)]);

        chart.Horizontal.To.Should().BeLessThan(20);
        chart.Marks.OfType<BarMark>().Should().HaveCount(4).And.OnlyContain(bar => bar.To <= chart.Horizontal.To);
        var level = chart.Marks.OfType<IntervalMark>().Should().ContainSingle().Subject;
        (level.Upper, level.Cut).Should().Be((chart.Horizontal.To, true));
        chart.Caption.Text.Should().Contain("go on beyond the edge").And.Contain("far beyond the edge stand in the table");
        Chart(Usual, Levels).Caption.Text.Should().NotContain("beyond");
    }

    [Fact]
    public void An_incidence_taken_as_exact_is_a_dot_and_the_caption_speaks_of_no_limits()
    {
        var chart = Chart(Usual, [new("as stated", 3, 3, 3)]);

        chart.Marks.OfType<IntervalMark>().Should().BeEmpty();
        chart.Marks.OfType<DotMark>().Should().ContainSingle().Which.X.Should().Be(3);
        chart.Caption.Text.Should().NotContain("limits");
    }

    [Fact]
    public void The_option_at_a_number_of_infections_is_the_one_whose_rung_holds_it()
    {
        LadderChart.At(Usual, 0).Name.Should().Be("no screening");
        LadderChart.At(Usual, 2.4).Name.Should().Be("weekly");
        LadderChart.At(Usual, 1000).Name.Should().Be("daily");
    }

    [Fact]
    public void Any_rungs_and_levels_give_a_well_formed_picture_whose_words_stand_within_it()
    {
        var level = Gen.Select(Gen.Double[0, 60], Gen.Double[0, 1], Gen.Double[1, 200]);
        Gen.Select(Gen.Double[0.01, 80].Array[1, 6], level.Array[1, 3]).Sample((steps, levels) =>
        {
            double[] places = [0, .. steps.Order().Distinct()];
            var chart = Chart(
                [.. places.Select((from, index) => new LadderRung($"option {index} with a long name", from, index < places.Length - 1 ? places[index + 1] : null))],
                [.. levels.Select((one, index) => new LadderLevel($"last {index} days", one.Item1, one.Item1 * one.Item2, one.Item1 * one.Item3))]);
            XElement.Parse(ChartRenderer.Svg(chart)).Name.LocalName.Should().Be("svg");
            var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
            foreach (var label in chart.Marks.OfType<LabelMark>())
            {
                var (x, wide) = (area.Pixel(label.X, label.Y).X, ChartText.Measure(label.Text));
                var (from, to) = label.Side is LabelSide.Left or LabelSide.AboveLeft ? (x - wide - 8, x) : (x, x + wide + 8);
                from.Should().BeGreaterThanOrEqualTo(area.Left - 1, label.Text);
                to.Should().BeLessThanOrEqualTo(Reporting.Charts.Model.Chart.Width, label.Text);
            }
        }, iter: 60);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(Chart(Usual, Levels)))).Distinct().Should().ContainSingle();

    private static Chart Chart(ImmutableArray<LadderRung> rungs, ImmutableArray<LadderLevel> levels) => LadderChart.Of(Frame, rungs, levels, "infections in a week among 1,000 people", Print);

    private static string Print(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string[] Words(Chart chart) => [.. chart.Marks.OfType<LabelMark>().Select(label => label.Text)];
}
