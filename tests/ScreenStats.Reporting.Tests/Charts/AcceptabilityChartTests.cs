using System.Collections.Immutable;
using System.Xml.Linq;
using CsCheck;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Charts.Worth;

namespace ScreenStats.Reporting.Tests.Charts;

public class AcceptabilityChartTests
{
    private static readonly ChartFrame Frame = new("likely", "Title", "See.", "Described.", "worth-acceptability");

    private static readonly ImmutableArray<AcceptabilityLine> Usual =
    [
        new("none", [(0, 0.9, true), (5_000, 0.5, true), (10_000, 0.3, false), (15_000, 0.1, false)]), new("monthly", [(0, 0.01, false), (5_000, 0.02, false), (10_000, 0.02, false), (15_000, 0, false)]),
        new("weekly", [(0, 0.09, false), (5_000, 0.48, false), (10_000, 0.5, true), (15_000, 0.4, false)], IsJudged: true), new("daily", [(0, 0, false), (5_000, 0, false), (10_000, 0.18, false), (15_000, 0.5, true)]),
    ];

    [Fact]
    public void Each_option_is_a_line_through_its_shares_and_has_its_name_in_its_own_colour()
    {
        var chart = Chart(Usual);

        foreach (var line in Usual) chart.Marks.OfType<LineMark>().Where(mark => mark.Points.SequenceEqual(line.Points.Select(point => (point.Value, point.Share)))).Should().ContainSingle();
        foreach (var line in Usual.Where(line => line.Name != "monthly"))
        {
            Label(chart, line.Name).Tone.Should().Be(chart.Marks.OfType<LineMark>().First(mark => mark.Points.SequenceEqual(line.Points.Select(point => (point.Value, point.Share)))).Tone);
        }

        Label(chart, "weekly").Strong.Should().BeTrue("the verdict is of it");
    }

    [Fact]
    public void Where_an_option_is_the_one_to_choose_its_line_is_thick()
    {
        var chart = Chart(Usual);
        var thick = chart.Marks.OfType<LineMark>().Where(line => line.Width > 4 && line.Tone != Tone.Quiet).ToArray();

        thick.Should().HaveCount(2, "a last point alone has no length");
        thick[0].Points.Should().Equal((0, 0.9), (5_000, 0.5));
        thick[1].Points[0].Should().Be((10_000, 0.5));
        thick[1].Points[1].X.Should().BeInRange(11_000, 12_000, "a stretch of one value is seen all the same");
        chart.Caption.Text.Should().Contain("Thick: the one to choose, best on average.");
    }

    [Fact]
    public void The_stated_value_is_marked_with_its_words()
    {
        var chart = Chart(Usual);

        chart.Marks.OfType<LineMark>().Single(line => line.Dashed).Points.Select(point => point.X).Should().AllBeEquivalentTo(8_000.0);
        Words(chart).Should().Contain("stated: 8,000");
        AcceptabilityChart.Of(Frame, Usual, "value, EUR", null, "").Marks.OfType<LineMark>().Should().NotContain(line => line.Dashed);
    }

    [Fact]
    public void One_that_is_seldom_the_best_is_pale_and_without_a_name_and_that_is_said()
    {
        var chart = Chart(Usual);

        Words(chart).Should().NotContain("monthly");
        chart.Marks.OfType<LineMark>().Should().ContainSingle(line => line.Tone == Tone.Unknown);
        chart.Caption.Text.Should().EndWith("options that are seldom the best, in the table.");
        Chart([Usual[0], Usual[2]]).Caption.Text.Should().NotContain("Pale");
    }

    [Fact]
    public void Beyond_four_options_lines_are_dashed_so_that_a_colour_never_stands_alone()
    {
        ImmutableArray<AcceptabilityLine> many = [.. Enumerable.Range(0, 6).Select(index => new AcceptabilityLine("option " + index, [(0, 0.1 + (0.02 * index), false), (10, 0.2, false)]))];
        var lines = AcceptabilityChart.Of(Frame, many, "value", null, "").Marks.OfType<LineMark>().ToArray();

        lines.Select(line => (line.Tone, line.Dashed)).Should().OnlyHaveUniqueItems();
    }

    [Fact]
    public void Any_shares_give_a_well_formed_picture()
    {
        var share = Gen.Select(Gen.Double[0, 1], Gen.Bool);
        Gen.Select(share.Array[5].Array[1, 9], Gen.Double[0, 6]).Sample((drawn, stated) =>
        {
            ImmutableArray<AcceptabilityLine> lines = [.. drawn.Select((one, index) => new AcceptabilityLine("<option & " + index, [.. one.Select((point, at) => ((double)at, point.Item1, point.Item2))]))];
            var chart = AcceptabilityChart.Of(Frame, lines, "value", stated, "stated");
            XElement.Parse(ChartRenderer.Svg(chart)).Name.LocalName.Should().Be("svg");
            var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
            chart.Marks.OfType<LabelMark>().Should().NotContain(label => area.Pixel(label.X, label.Y).X < area.Left - 1 || area.Pixel(label.X, label.Y).Y >= area.Height);
        }, iter: 30);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(Chart(Usual)))).Distinct().Should().ContainSingle();

    private static Chart Chart(ImmutableArray<AcceptabilityLine> lines) => AcceptabilityChart.Of(Frame, lines, "value of one infection averted, EUR", 8_000, "stated: 8,000");

    private static LabelMark Label(Chart chart, string text) => chart.Marks.OfType<LabelMark>().Single(label => label.Text == text);

    private static string[] Words(Chart chart) => [.. chart.Marks.OfType<LabelMark>().Select(label => label.Text)];
}
