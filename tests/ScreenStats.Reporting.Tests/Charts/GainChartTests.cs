using System.Collections.Immutable;
using System.Xml.Linq;
using CsCheck;
using ScreenStats.Reporting.Charts.Cadence;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Tests.Charts;

public class GainChartTests
{
    private static readonly ChartFrame Frame = new("gain", "Title", "See.", "Described.", "cadence");

    private static readonly ImmutableArray<OptionPoint> Usual =
    [
        Point("none", 0, 0), Point("monthly", 1, 0.11), Point("fortnightly", 2.1, 0.22), Point("weekly", 4.3, 0.38), Point("twice-weekly", 8.6, 0.55, OptionStanding.Planned),
        Point("three-a-week", 12.9, 0.64), Point("every-second-day", 15, 0.66, OptionStanding.Chosen), Point("daily", 30, 0.74),
    ];

    [Fact]
    public void Every_option_stands_at_what_it_asks_and_gives_with_its_limits_and_its_name()
    {
        var chart = GainChart.Of(Frame, Usual, "screens", "removed");

        foreach (var option in Usual)
        {
            chart.Marks.OfType<DotMark>().Should().ContainSingle(dot => dot.X == option.Burden && dot.Y == option.Gain);
            if (option.Upper > option.Lower) chart.Marks.OfType<LineMark>().Should().ContainSingle(line => line.Points.Length == 2 && line.Points[0].X == option.Burden && line.Points[0].Y == option.Lower && line.Points[1].Y == option.Upper);
            Words(chart).Should().ContainSingle(word => word.Split(',')[0] == option.Name);
        }

        chart.Marks.OfType<BandMark>().Should().ContainSingle().Which.Points.Select(point => point.X).Should().BeInAscendingOrder().And.HaveCount(Usual.Length);
    }

    [Fact]
    public void Planned_and_chosen_have_a_shape_and_a_word_of_their_own()
    {
        var chart = GainChart.Of(Frame, Usual, "screens", "removed");

        Words(chart).Should().Contain("twice-weekly, planned").And.Contain("every-second-day, chosen");
        chart.Marks.OfType<DotMark>().Single(dot => dot.X == 8.6).Shape.Should().Be(DotShape.HollowDiamond);
        chart.Marks.OfType<DotMark>().Single(dot => dot.X == 15).Shape.Should().Be(DotShape.Square);
        chart.Marks.OfType<DotMark>().Where(dot => dot.Shape == DotShape.Filled).Should().HaveCount(6);
        chart.Caption.Text.Should().Contain("Square: the option that the stated rule chooses.").And.Contain("Open diamond: what the program set out to do.");
    }

    [Fact]
    public void One_that_is_planned_and_chosen_says_both()
    {
        var chart = GainChart.Of(Frame, [Point("none", 0, 0), Point("weekly", 4.3, 0.4, OptionStanding.Planned | OptionStanding.Chosen)], "screens", "removed");

        Words(chart).Should().Contain("weekly, planned and chosen");
        chart.Caption.Text.Should().Contain("which is the planned one too").And.NotContain("Open diamond");
    }

    [Fact]
    public void What_was_done_is_a_ring_off_the_line()
    {
        var chart = GainChart.Of(Frame, [.. Usual.Take(4), Point("(as done)", 3.1, 0.25, OptionStanding.Done)], "screens", "removed");

        chart.Marks.OfType<DotMark>().Single(dot => dot.X == 3.1).Shape.Should().Be(DotShape.Hollow);
        chart.Marks.OfType<LineMark>().Single(line => line.Points.Length > 2).Points.Should().NotContain(point => point.X == 3.1);
        Words(chart).Should().Contain("as done");
    }

    [Fact]
    public void Any_options_give_a_well_formed_picture_whose_names_stand_within_it()
    {
        var option = Gen.Select(Gen.Double[0, 30], Gen.Double[0, 1], Gen.Double[0, 0.3], Gen.String[Gen.Char["abcdefgh "], 1, 40]);
        Gen.Select(option.Array[2, 12], Gen.Int[0, 11]).Sample((drawn, chosen) =>
        {
            ImmutableArray<OptionPoint> points =
                [.. drawn.Select((one, index) => new OptionPoint(one.Item4 + index, one.Item1 + (0.01 * index), one.Item2, Math.Max(0, one.Item2 - one.Item3), Math.Min(1, one.Item2 + one.Item3), index == chosen ? OptionStanding.Chosen : 0))];
            var chart = GainChart.Of(Frame, points, "screens", "removed");
            XElement.Parse(ChartRenderer.Svg(chart)).Name.LocalName.Should().Be("svg");
            var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
            chart.Marks.OfType<LabelMark>().Should().NotBeEmpty().And.OnlyContain(label => area.Pixel(label.X, label.Y).X >= area.Left && area.Pixel(label.X, label.Y).Y < area.Height);
        }, iter: 30);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(GainChart.Of(Frame, Usual, "screens", "removed")))).Distinct().Should().ContainSingle();

    private static OptionPoint Point(string name, double burden, double gain, OptionStanding standing = OptionStanding.None) =>
        new(name, burden, gain, Math.Max(0, gain - (0.12 * gain)), gain + (0.15 * gain), standing);

    private static string[] Words(Chart chart) => [.. chart.Marks.OfType<LabelMark>().Select(label => label.Text)];
}
