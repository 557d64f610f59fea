using System.Collections.Immutable;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Levels;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Tests.Charts;

/// <summary>Pictures of levels with bounds, of quotients, and of what is stated beside what is seen.</summary>
public class LevelPicturesTests
{
    private static readonly ChartFrame Frame = new("id", "Title", "Finding.", "Described.", "table");
    private static readonly (string, string, string) Words = ("case", "cases", "sites");

    [Fact]
    public void Bounds_are_a_thinner_line_below_the_limits_and_the_whole_program_is_a_rule()
    {
        var chart = BoundedChart.Of(Frame, [Level("A", 0.3, 100, flagged: true), Level("B", 0.6, 100), Level("C", 0.7, 9)], 0.5, "lots");

        chart.Marks.OfType<RuleMark>().Should().ContainSingle().Which.At.Should().Be(0.5);
        var intervals = chart.Marks.OfType<IntervalMark>().ToArray();
        intervals.Select(mark => (mark.At, mark.Tone, mark.Faded)).Should().Equal((2, Tone.Alert, false), (1, Tone.Main, false), (0, Tone.Main, true));
        var bounds = chart.Marks.OfType<LineMark>().Where(line => line.Points[0].Y == line.Points[1].Y).ToArray();
        bounds.Select(line => (line.Points[0].X, line.Points[1].X, line.Points[0].Y)).Should().Equal(intervals.Select(mark => (mark.Estimate - 0.2, mark.Estimate + 0.25, mark.At - BoundedChart.Below)));
        bounds.Should().OnlyContain(line => line.Width < 1.5, "limits are thicker");
        chart.Marks.OfType<LabelMark>().Where(label => label.Strong).Should().ContainSingle().Which.Text.Should().Be("flagged");
        chart.Caption.Text.Should().Contain("Diamond and word: flagged.").And.Contain("Hollow and pale: fewer than 20 runs with a conclusion.");
    }

    [Theory]
    [InlineData(0.1, false)]
    [InlineData(0.8, true)]
    public void The_word_of_a_flagged_level_stands_where_neither_limits_nor_bounds_are(double estimate, bool left)
    {
        var chart = BoundedChart.Of(Frame, [Level("A", estimate, 100, flagged: true), Level("B", 0.5, 100)], 0.5, "lots");

        var word = chart.Marks.OfType<LabelMark>().Single(label => label.Strong);
        word.Side.Should().Be(left ? LabelSide.Left : LabelSide.Right);
        word.X.Should().BeApproximately(left ? estimate - 0.2 : estimate + 0.25, 1e-12);
    }

    [Fact]
    public void Bounds_that_may_not_be_seen_are_not_drawn()
    {
        var chart = BoundedChart.Of(Frame, [Level("A", 0.3, 100) with { BoundLower = null }, Level("B", 0.6, 100)], null, "lots");

        chart.Marks.OfType<LineMark>().Count(line => line.Points[0].Y == line.Points[1].Y).Should().Be(1);
        chart.Marks.OfType<RuleMark>().Should().BeEmpty();
    }

    [Fact]
    public void Of_a_thousand_levels_the_flagged_ones_and_those_farthest_down_are_drawn()
    {
        var points = Enumerable.Range(0, 1000).Select(index => Level($"L{index:000}", 0.3 + (index * 0.0004), 100, index == 999)).ToImmutableArray();
        var chart = BoundedChart.Of(Frame, points, 0.5, "lots");

        chart.Vertical.Ticks.Should().HaveCount(LevelChart.Most);
        chart.Vertical.Ticks[0].Label.Should().Be("L000");
        chart.Vertical.Ticks[^1].Label.Should().Be("L999");
        chart.Caption.Text.Should().EndWith("Shown are the 40 of 1,000 lots that stand out most (flagged, then the lowest upper limits); the table has all.");
    }

    [Fact]
    public void Where_nothing_was_found_a_line_goes_on_beyond_the_edge_from_the_lower_limit()
    {
        var chart = QuotientChart.Of(Frame, [new("A", 20, 50, 30, 80), new("B", 2, 200, 60, 900), new("C", 0, null, 300, null)], 70, Words, "runs for each case");

        var least = chart.Marks.OfType<AtLeastMark>().Should().ContainSingle().Subject;
        (least.At, least.Lower, least.Open).Should().Be((2, 300, true));
        least.Edge.Should().BeGreaterThan(900).And.BeLessThan(chart.Horizontal.To);
        chart.Marks.OfType<LabelMark>().Should().Contain(label => label.Text == "no case" && label.X == 300);
        chart.Marks.OfType<IntervalMark>().Select(mark => (mark.Estimate, mark.Upper, mark.Faded, mark.Cut)).Should().Equal((200, 900, true, false), (50, 80, false, false));
        chart.Caption.Text.Should().Contain("Hollow and pale: fewer than 5 cases.").And.Contain("no case, so that there is a lower limit only");
    }

    [Fact]
    public void Words_at_the_left_edge_stand_above_their_line()
    {
        var chart = QuotientChart.Of(Frame, [new("A", 20, 50, 30, 80), new("B", 0, null, 5, null), new("C", 0, null, 60, null)], 70, Words, "runs for each case");

        chart.Marks.OfType<LabelMark>().Where(label => label.Text == "no case").Select(label => label.Side).Should().Equal(LabelSide.Left, LabelSide.AboveRight);
    }

    [Theory]
    [InlineData(80, false)]
    [InlineData(301, true)]
    public void Limits_far_apart_are_drawn_by_powers_of_ten(double upper, bool powers)
    {
        var chart = QuotientChart.Of(Frame, [new("A", 20, 50, 30, 79), new("B", 20, 60, 40, upper)], 55, Words, "runs for each case");

        chart.Horizontal.Scale.Should().Be(powers ? AxisScale.Logarithmic : AxisScale.Linear);
        chart.Caption.Text.Contains("equal multiples", StringComparison.Ordinal).Should().Be(powers);
        chart.Horizontal.Ticks.Should().HaveCountGreaterThan(2).And.OnlyContain(tick => tick.Position <= chart.Horizontal.To);
    }

    [Fact]
    public void Of_a_thousand_sites_those_with_the_highest_lower_limits_are_drawn()
    {
        var points = Enumerable.Range(1, 1000).Select(index => new QuotientPoint($"S{index:0000}", 20, 2 * index, index, 3 * index)).ToImmutableArray();
        var chart = QuotientChart.Of(Frame, points, 900, Words, "runs for each case");

        chart.Vertical.Ticks.Should().HaveCount(LevelChart.Most);
        chart.Vertical.Ticks[0].Label.Should().Be("S1000");
        chart.Caption.Text.Should().EndWith("Shown are the 40 of 1,000 sites with the highest lower limits; the table has all.");
    }

    [Fact]
    public void A_specificity_is_drawn_near_the_whole_and_its_far_bounds_go_on_beyond_the_edge()
    {
        StatedRow here = new("estimated here", 0.998, 0.996, 0.999) { Bounds = (0.9, 0.9985) };
        var chart = StatedChart.Of(Frame, here, [new("Kit", 0.997, 0.995, 0.998), new("Other", 0.99, 0.99, 0.99) { TakenAsExact = true }], near: true);

        chart.Horizontal.From.Should().BeInRange(0.985, 0.99);
        chart.Marks.OfType<IntervalMark>().Select(mark => mark.Estimate).Should().Equal(0.998, 0.997, 0.99);
        chart.Marks.OfType<LabelMark>().Select(label => label.Text).Should().Equal("99.80 %", "99.70 %", "99.0 %, stated without limits");
        chart.Marks.OfType<LineMark>().SelectMany(line => line.Points).Should().OnlyContain(point => point.X >= chart.Horizontal.From);
        chart.Caption.Text.Should().Contain("The scale does not begin at nothing.");
        StatedChart.Of(Frame, here, [new("Kit", 0.997, 0.995, 0.998)], near: false).Horizontal.From.Should().BeInRange(-0.02, 0);
    }

    [Fact]
    public void A_one_sided_limit_is_a_line_without_a_dot_that_says_at_least()
    {
        var chart = StatedChart.Of(Frame, new("estimated here", null, 0.72, null), [new("Kit", 0.8, 0.7, 0.9)], near: false);

        var least = chart.Marks.OfType<AtLeastMark>().Should().ContainSingle().Subject;
        (least.Lower, least.Edge, least.Open).Should().Be((0.72, 1, false));
        chart.Marks.OfType<LabelMark>().Should().Contain(label => label.Text == "at least 72.0 %");
        chart.Marks.OfType<IntervalMark>().Should().ContainSingle().Which.Estimate.Should().Be(0.8);
    }

    private static BoundedPoint Level(string name, double estimate, long runs, bool flagged = false) =>
        new(new ChartPoint(runs, estimate, estimate - 0.1, estimate + 0.1, name, Flagged: flagged), estimate - 0.2, estimate + 0.25);
}
