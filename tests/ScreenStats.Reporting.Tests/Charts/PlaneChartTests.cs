using System.Collections.Immutable;
using System.Xml.Linq;
using CsCheck;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Charts.Worth;

namespace ScreenStats.Reporting.Tests.Charts;

public class PlaneChartTests
{
    private static readonly ChartFrame Frame = new("plane", "Title", "See.", "Described.", "worth-options");

    private static readonly ImmutableArray<PlanePoint> Usual =
    [
        new("none", 0, 0, 0, 0, 0, 0, PlaneStanding.OnFrontier), Point("monthly", 4, 21_000), Point("weekly", 15, 72_000, PlaneStanding.OnFrontier),
        Point("twice-weekly", 24, 125_000, PlaneStanding.OnFrontier | PlaneStanding.Best, "best"), Point("three-a-week", 29, 190_000, PlaneStanding.Judged, "planned"), Point("daily", 36, 420_000, PlaneStanding.OnFrontier),
    ];

    [Fact]
    public void Every_option_stands_at_what_it_gains_and_costs_with_bars_for_both_and_its_name()
    {
        var chart = Chart(Usual);

        foreach (var option in Usual)
        {
            chart.Marks.OfType<DotMark>().Should().ContainSingle(dot => dot.X == option.Effect && dot.Y == option.Cost);
            chart.Marks.OfType<LabelMark>().Should().ContainSingle(label => label.Text == option.Words || label.Text == option.Words + ", dominated");
            if (option.CostUpper == option.CostLower) continue;
            Bars(chart, option).Should().HaveCount(2);
            Bars(chart, option).Single(bar => bar.Points[0].Y == bar.Points[1].Y).Points[0].X.Should().Be(option.EffectLower);
            Bars(chart, option).Single(bar => bar.Points[0].X == bar.Points[1].X).Points.Select(point => point.Y).Should().Equal(option.CostLower, option.CostUpper);
        }
    }

    [Fact]
    public void Dominated_ones_are_open_and_off_the_frontier_and_the_picture_says_so()
    {
        var chart = Chart(Usual);

        Dot(chart, "monthly").Shape.Should().Be(DotShape.Hollow);
        Dot(chart, "weekly").Shape.Should().Be(DotShape.Filled);
        chart.Marks.OfType<LineMark>().Single(line => line.Points.Length > 2).Points.Should().Equal((0, 0), (15, 72_000), (24, 125_000), (36, 420_000));
        chart.Marks.OfType<LabelMark>().Select(label => label.Text).Should().ContainSingle(text => text.EndsWith(", dominated", StringComparison.Ordinal)).And.Subject.Should().Contain("frontier");
        chart.Caption.Text.Should().Contain("Open: dominated, by another option or by a mix of two.");
    }

    [Fact]
    public void Best_and_judged_have_a_shape_and_a_word_of_their_own()
    {
        var chart = Chart(Usual);

        Dot(chart, "twice-weekly").Shape.Should().Be(DotShape.Square);
        Dot(chart, "three-a-week").Shape.Should().Be(DotShape.HollowDiamond);
        chart.Caption.Text.Should().Contain("Square: the best at the stated value.").And.Contain("Open diamond: the one judged.");
        Chart([Usual[0], Usual[3] with { Standing = PlaneStanding.OnFrontier | PlaneStanding.Best | PlaneStanding.Judged, Remark = "planned and best" }]).Caption.Text
            .Should().Contain("which is the one judged too").And.NotContain("Open");
    }

    [Fact]
    public void The_line_of_the_stated_value_goes_through_no_screening_with_that_slope_and_says_what_it_is()
    {
        var line = Chart(Usual).Marks.OfType<LineMark>().Single(line => line.Dashed);

        line.Points[0].Should().Be((0, 0));
        (line.Points[1].Y / line.Points[1].X).Should().BeApproximately(8_000, 1e-9);
        Chart(Usual).Marks.OfType<LabelMark>().Should().ContainSingle(label => label.Text == "worth 8,000 each");
        Chart(Usual).Caption.Text.Should().Contain("below the dashed line gains more than it costs");
        var without = PlaneChart.Of(Frame, Usual, "infections averted", "cost, EUR", null, "");
        without.Marks.OfType<LineMark>().Should().NotContain(line => line.Dashed);
        without.Caption.Text.Should().NotContain("dashed");
    }

    [Fact]
    public void Limits_far_beyond_the_options_are_cut_at_the_edge_and_that_is_said()
    {
        var chart = Chart([Usual[0], Usual[2] with { EffectUpper = 900, CostUpper = 9_000_000 }, Usual[5]]);

        chart.Horizontal.To.Should().BeLessThan(60);
        chart.Vertical.To.Should().BeLessThan(1_000_000);
        chart.Marks.OfType<LineMark>().SelectMany(line => line.Points).Should().OnlyContain(point => point.X <= chart.Horizontal.To && point.Y <= chart.Vertical.To);
        chart.Caption.Text.Should().Contain("where one ends at the edge it goes on");
        Chart([Usual[0], Usual[2] with { EffectUpper = 17, CostUpper = 75_000 }]).Caption.Text.Should().NotContain("goes on");
    }

    [Fact]
    public void An_option_that_saves_money_stands_below_a_line_at_0()
    {
        var chart = Chart([Usual[0], Point("weekly", 15, -20_000, PlaneStanding.OnFrontier)]);

        chart.Vertical.From.Should().BeLessThan(-20_000);
        chart.Marks.OfType<RuleMark>().Should().ContainSingle().Which.At.Should().Be(0);
    }

    [Fact]
    public void Costs_that_differ_by_next_to_nothing_leave_room_for_the_picture()
    {
        var chart = Chart([Point("weekly", 192, 0), Point("daily", 1, -4.4e-74, PlaneStanding.OnFrontier)]);

        new PictureArea(chart.Horizontal, chart.Vertical, chart.Height).Wide.Should().BeGreaterThan(300);
        chart.Vertical.Ticks.Should().OnlyContain(tick => tick.Label.Length < 8);
    }

    [Fact]
    public void Any_options_give_a_well_formed_picture_whose_names_stand_within_it()
    {
        var option = Gen.Select(Gen.Double[-5, 300], Gen.Double[-1e6, 1e7], Gen.Double[0, 3], Gen.String[Gen.Char["abcdefgh <&"], 1, 22], Gen.Int[0, 7]);
        Gen.Select(option.Array[2, 14], Gen.Double[0, 1e6]).Sample((drawn, value) =>
        {
            ImmutableArray<PlanePoint> points =
            [
                .. drawn.Select((one, index) => new PlanePoint(
                    one.Item4 + index, one.Item1 + index, one.Item1 + index - one.Item3, one.Item1 + index + (20 * one.Item3), one.Item2, one.Item2 * (one.Item2 > 0 ? 0.5 : 2), one.Item2 + (1e5 * one.Item3), (PlaneStanding)one.Item5)),
            ];
            var chart = PlaneChart.Of(Frame, points, "averted", "cost", value, "worth it");
            XElement.Parse(ChartRenderer.Svg(chart)).Name.LocalName.Should().Be("svg");
            var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
            chart.Marks.OfType<LabelMark>().Should().NotBeEmpty().And.OnlyContain(label => area.Pixel(label.X, label.Y).X >= area.Left - 1 && area.Pixel(label.X, label.Y).X <= Reporting.Charts.Model.Chart.Width && area.Pixel(label.X, label.Y).Y < area.Height);
        }, iter: 30);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture() =>
        Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(Chart(Usual)))).Distinct().Should().ContainSingle();

    private static Chart Chart(ImmutableArray<PlanePoint> options) => PlaneChart.Of(Frame, options, "infections averted", "cost, EUR", 8_000, "worth 8,000 each");

    private static PlanePoint Point(string name, double effect, double cost, PlaneStanding standing = PlaneStanding.None, string remark = "") =>
        new(name, effect, 0.9 * effect, 1.1 * effect, cost, cost - (0.1 * Math.Abs(cost)), cost + (0.1 * Math.Abs(cost)), standing, remark);

    private static DotMark Dot(Chart chart, string name) => chart.Marks.OfType<DotMark>().Single(dot => Usual.Any(option => option.Name == name && option.Effect == dot.X && option.Cost == dot.Y));

    private static LineMark[] Bars(Chart chart, PlanePoint option) =>
        [.. chart.Marks.OfType<LineMark>().Where(line => !line.Dashed && line.Points.Length == 2 && (line.Points.All(point => point.X == option.Effect) || line.Points.All(point => point.Y == option.Cost)) && line.Width < 2)
            .Where(line => line.Points[0] != (option.Effect, option.Cost))];
}
