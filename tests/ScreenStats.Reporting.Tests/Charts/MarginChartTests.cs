using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Charts.Worth;

namespace ScreenStats.Reporting.Tests.Charts;

public class MarginChartTests
{
    private static readonly ChartFrame Frame = new("margins", "Title", "See.", "Described.", "worth-figures");

    private static readonly ImmutableArray<MarginRow> Usual =
        [new("monthly", (7_000, 5_000, 9_000), (7_000, 5_000, 9_000)), new("weekly", (7_200, 5_500, 9_500), (7_600, 5_000, 11_000)), new("daily", (14_000, 10_000, 20_000), (42_000, 30_000, 60_000))];

    [Fact]
    public void Each_option_has_its_average_open_and_its_last_step_filled_with_their_limits()
    {
        var chart = Chart(Usual);

        chart.Vertical.Ticks.Select(tick => tick.Label).Should().Equal("monthly", "weekly", "daily");
        Dots(chart, DotShape.Hollow).Should().Equal(7_000, 7_200, 14_000);
        Dots(chart, DotShape.Filled).Should().Equal(7_000, 7_600, 42_000);
        foreach (var (estimate, lower, upper) in Usual.SelectMany(row => new[] { row.Average!.Value, row.Last!.Value }))
        {
            var at = chart.Marks.OfType<DotMark>().Where(dot => dot.X == estimate).Select(dot => dot.Y);
            chart.Marks.OfType<LineMark>().Where(line => line.Points[0].X == lower && line.Points[1].X == upper).Select(line => line.Points[0].Y).Should().Contain(at);
        }

        Words(chart).Should().Contain(["7,000: average over all of it", "7,000: of the last step", "7,200", "42,000"]);
        chart.Horizontal.Scale.Should().Be(AxisScale.Logarithmic);
        chart.Caption.Text.Should().Contain("powers of ten").And.NotContain("goes on");
    }

    [Fact]
    public void A_limit_of_nothing_or_far_out_is_cut_at_the_edge_and_that_is_said()
    {
        var chart = Chart([new("weekly", (7_000, 0, 9_000), null), new("daily", (14_000, 10_000, 9e9), (42_000, -5, 60_000))]);

        chart.Horizontal.From.Should().BeGreaterThan(0);
        chart.Horizontal.To.Should().BeLessThan(2e6);
        chart.Marks.OfType<LineMark>().SelectMany(line => line.Points).Should().OnlyContain(point => point.X >= chart.Horizontal.From && point.X <= chart.Horizontal.To);
        chart.Caption.Text.Should().Contain("Where one ends at the edge it goes on, to the limit in the table.");
    }

    [Fact]
    public void Any_figures_give_a_well_formed_picture_whose_words_stand_within_it()
    {
        var figure = Gen.Select(Gen.Double[0.01, 1e6], Gen.Double[-0.5, 1], Gen.Double[1, 50]);
        Gen.Select(figure, figure).Array[1, 8].Sample(drawn =>
        {
            (double, double, double) Limits((double Estimate, double Low, double High) one) => (one.Estimate, one.Estimate * one.Low, one.Estimate * one.High);
            var chart = Chart([.. drawn.Select((one, index) => new MarginRow($"option {index} with a long name", Limits(one.Item1), index % 3 == 2 ? null : Limits(one.Item2)))]);
            XElement.Parse(ChartRenderer.Svg(chart)).Name.LocalName.Should().Be("svg");
            var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
            foreach (var label in chart.Marks.OfType<LabelMark>().Where(label => label.Side is LabelSide.AboveRight or LabelSide.AboveLeft))
            {
                var (x, wide) = (area.Pixel(label.X, label.Y).X, ChartText.Measure(label.Text));
                (label.Side == LabelSide.AboveLeft ? x - wide : x).Should().BeGreaterThanOrEqualTo(0, label.Text);
                (label.Side == LabelSide.AboveLeft ? x : x + wide).Should().BeLessThanOrEqualTo(Reporting.Charts.Model.Chart.Width, label.Text);
            }
        }, iter: 40);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(Chart(Usual)))).Distinct().Should().ContainSingle();

    private static Chart Chart(ImmutableArray<MarginRow> rows) => MarginChart.Of(Frame, rows, "EUR for each infection averted", value => value.ToString("#,0", CultureInfo.InvariantCulture));

    private static double[] Dots(Chart chart, DotShape shape) => [.. chart.Marks.OfType<DotMark>().Where(dot => dot.Shape == shape && Math.Abs(dot.Y - Math.Round(dot.Y)) is > 0.2 and < 0.3 && dot.Y < 2.5).OrderByDescending(dot => dot.Y).Select(dot => dot.X)];

    private static string[] Words(Chart chart) => [.. chart.Marks.OfType<LabelMark>().Select(label => label.Text)];
}
