using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Comparisons;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Tests.Charts;

public class FunnelChartTests
{
    private static readonly ChartFrame Frame = new("id", "Title", "See.", "Described.", "comparison");

    [Fact]
    public void Standing_is_a_shape_and_a_word_and_only_what_lies_outside_is_named()
    {
        var chart = Of([Dot("A", 900, 0.05, LevelStanding.Above), Dot("B", 1000, 0.02), Dot("C", 800, 0.002, LevelStanding.Below)]);

        Drawn(chart).Select(dot => dot.Shape).Should().Equal(DotShape.Filled, DotShape.TriangleUp, DotShape.TriangleDown);
        Words(chart).Should().Contain(["A", "C"]).And.NotContain("B");
        chart.Caption.Text.Should().Contain("above pointing up, below pointing down");
    }

    [Fact]
    public void No_colour_judges_above_and_below_are_as_dark_as_words()
    {
        var chart = Of([Dot("A", 900, 0.05, LevelStanding.Above), Dot("B", 1000, 0.02), Dot("C", 800, 0.002, LevelStanding.Below)]);

        Drawn(chart).Where(dot => dot.Shape != DotShape.Filled).Should().AllSatisfy(dot => dot.Tone.Should().Be(Tone.Ink));
        chart.Marks.OfType<LineMark>().Should().AllSatisfy(line => line.Tone.Should().BeOneOf(Tone.Main, Tone.Quiet));
    }

    [Fact]
    public void Limits_that_allow_for_usual_differences_are_drawn_strong_and_those_of_chance_thin()
    {
        ImmutableArray<FunnelDot> dots = [Dot("A", 900, 0.025), Dot("B", 1000, 0.02)];
        var chart = FunnelChart.Of(Frame, dots, 0.02, Limits(1), Limits(1.2), "sites", "runs");
        var alone = FunnelChart.Of(Frame, dots, 0.02, Limits(1), [], "sites", "runs");

        chart.Marks.OfType<LineMark>().Where(line => line.Points.Length > 2).GroupBy(line => line.Width).Select(group => (group.Key, group.Count())).Should().BeEquivalentTo([(1.0, 4), (2.2, 2)]);
        alone.Marks.OfType<LineMark>().Where(line => line.Points.Length > 2).Should().HaveCount(2);
        chart.Caption.Text.Should().Contain("differ by more than chance");
        alone.Caption.Text.Should().Contain("998 in 1,000").And.EndWith("None lies outside.");
    }

    [Fact]
    public void Sizes_far_apart_make_the_axis_logarithmic_and_it_says_so()
    {
        Of([Dot("A", 900, 0.05), Dot("B", 1000, 0.02), Dot("C", 800, 0.002)]).Horizontal.Scale.Should().Be(AxisScale.Linear);
        var wide = Of([Dot("A", 20, 0.05), Dot("B", 40, 0.02), Dot("C", 90_000, 0.02)]);
        wide.Horizontal.Scale.Should().Be(AxisScale.Logarithmic);
        wide.Horizontal.Label.Should().Contain("logarithmic");
        wide.Horizontal.Ticks.Select(tick => tick.Label).Should().Equal("100", "1,000", "10,000", "100,000");
    }

    [Fact]
    public void A_thousand_levels_are_all_drawn_and_names_neither_overlap_nor_leave_the_picture()
    {
        var dots = Enumerable.Range(0, 1000).Select(index => Dot(
            $"Site {index:0000}", 20 + (index * 37 % 4000), index % 25 == 0 ? 0.06 + (index * 0.00003) : 0.004 + (index % 31 * 0.0008), index % 25 == 0 ? LevelStanding.Above : LevelStanding.Within)).ToImmutableArray();
        var chart = Of(dots);

        Drawn(chart).Should().HaveCount(1000);
        var names = chart.Marks.OfType<LabelMark>().Where(label => label.Text.StartsWith("Site", StringComparison.Ordinal)).ToArray();
        names.Should().HaveCountLessThanOrEqualTo(FunnelChart.MostNames).And.HaveCountGreaterThan(3);
        chart.Caption.Text.Should().Contain($"{40 - names.Length} outside have no name here");
        var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
        var boxes = names.Select(label => Box(area, label)).ToArray();
        boxes.Should().AllSatisfy(box => box.Right.Should().BeLessThan(Chart.Width));
        for (var one = 0; one < boxes.Length; one++)
        {
            for (var other = one + 1; other < boxes.Length; other++)
                (boxes[one].Left < boxes[other].Right && boxes[other].Left < boxes[one].Right && boxes[one].Top < boxes[other].Bottom && boxes[other].Top < boxes[one].Bottom).Should().BeFalse($"{names[one].Text} and {names[other].Text}");
        }

        ChartRenderer.Svg(chart).Length.Should().BeLessThan(250_000);
    }

    [Fact]
    public void Outside_the_inner_limits_only_is_a_triangle_but_not_dark_and_named_only_where_levels_are_few()
    {
        ImmutableArray<FunnelDot> few = [Dot("A", 900, 0.035, LevelStanding.Above) with { Far = false }, .. Enumerable.Range(0, 9).Select(index => Dot($"S{index}", 900 + index, 0.02))];
        var chart = Of(few);
        Drawn(chart).Single(dot => dot.Shape == DotShape.TriangleUp).Tone.Should().Be(Tone.Main);
        Words(chart).Should().Contain("A");
        Words(Of([.. few, .. Enumerable.Range(0, 60).Select(index => Dot($"T{index}", 800 + index, 0.02))])).Should().NotContain("A");
    }

    [Fact]
    public void Where_names_may_not_stand_in_a_picture_none_does()
    {
        var chart = FunnelChart.Of(Frame, [Dot("A", 900, 0.06, LevelStanding.Above), Dot("B", 900, 0.02)], 0.02, Limits(1), [], "operators", "runs", named: false);
        Words(chart).Should().NotContain("A").And.Contain("99.8 % limits, chance alone");
    }

    [Fact]
    public void One_wild_level_with_few_runs_is_drawn_on_the_edge_with_its_share()
    {
        var chart = Of([Dot("Wild", 6, 0.667, LevelStanding.Above), .. Enumerable.Range(0, 9).Select(index => Dot($"S{index}", 900 + index, 0.02))]);

        chart.Vertical.To.Should().BeLessThan(0.12);
        Words(chart).Should().Contain("Wild 66.7 %");
        chart.Caption.Text.Should().Contain("1 beyond the upper edge is drawn on it.");
    }

    [Fact]
    public void A_single_level_and_one_without_any_event_have_a_picture()
    {
        ChartRenderer.Svg(Of([Dot("A", 1, 0)])).Should().Contain(">2.00 %<");
        ChartRenderer.Png(Of([Dot("A", 1, 1, LevelStanding.Above)])).Should().NotBeEmpty();
    }

    private static Chart Of(ImmutableArray<FunnelDot> dots) => FunnelChart.Of(Frame, dots, 0.02, Limits(1), [], "sites", "valid tests");

    private static DotMark[] Drawn(Chart chart) => [.. chart.Marks.OfType<DotMark>().Where(dot => dot.Y <= Top(chart) * 1.0001)];

    private static double Top(Chart chart)
    {
        var area = new PictureArea(chart.Horizontal, chart.Vertical, chart.Height);
        return area.YAt(PictureArea.Top + (chart.Height - 330 - PictureArea.Top - 52));
    }

    private static string[] Words(Chart chart) => [.. chart.Marks.OfType<LabelMark>().Select(label => label.Text)];

    private static (double Left, double Top, double Right, double Bottom) Box(PictureArea area, LabelMark label)
    {
        var (x, y) = area.Pixel(label.X, label.Y);
        var width = ChartText.Measure(label.Text, strong: true);
        var left = label.Side is LabelSide.Left or LabelSide.AboveLeft or LabelSide.BelowLeft ? x - width - 4 : x + 4;
        var top = label.Side switch { LabelSide.Right or LabelSide.Left => y - 8, LabelSide.AboveLeft or LabelSide.AboveRight => y - 21, _ => y + 6 };
        return (left, top, left + width, top + 15);
    }

    private static FunnelDot Dot(string name, long trials, double rate, LevelStanding standing = LevelStanding.Within) => new(name, trials, rate, standing, standing != LevelStanding.Within);

    private static ImmutableArray<FunnelLimit> Limits(double wide) =>
    [
        .. Enumerable.Range(0, 60).Select(index =>
        {
            var trials = Math.Pow(1.23, index);
            var half = wide * Math.Sqrt(0.02 * 0.98 / trials);
            return new FunnelLimit(trials, 0.02 - (1.96 * half), 0.02 + (1.96 * half), 0.02 - (3.09 * half), 0.02 + (3.09 * half));
        }),
    ];
}
