using System.Collections.Immutable;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Tests.Charts;

public class ChartModelTests
{
    private static readonly ChartFrame Frame = new("id", "Title", "See.", "Described.", "table");

    [Fact]
    public void Every_period_is_drawn_with_its_limits_in_the_middle_of_its_days()
    {
        var chart = PeriodChart.Of(Frame, [Period(0, 2000, 0.01), Period(1, 2000, 0.02)], 0.015, 7);
        var marks = chart.Marks.OfType<IntervalMark>().ToArray();
        marks.Should().HaveCount(2);
        marks.Should().AllSatisfy(mark => mark.Lower.Should().BeLessThan(mark.Upper));
        marks[0].At.Should().Be(new DateOnly(2026, 1, 5).DayNumber + 3);
        chart.Marks.OfType<RuleMark>().Should().ContainSingle().Which.At.Should().Be(0.015);
        chart.Marks.OfType<LabelMark>().Should().ContainSingle().Which.Text.Should().Be("dashed: whole span 1.50 %");
        chart.Vertical.From.Should().BeInRange(-0.001, 0, "a dot at 0 is not cut in half");
        chart.Vertical.To.Should().BeGreaterThan(marks.Max(mark => mark.Upper));
    }

    [Fact]
    public void A_period_with_few_tests_is_faded_and_its_limits_are_cut_instead_of_flattening_the_others()
    {
        var chart = PeriodChart.Of(Frame, [Period(0, 2000, 0.01), Period(1, 20, 0.02, 0.3), Period(2, 2000, 0.02)], null, 7);
        var mark = chart.Marks.OfType<IntervalMark>().ElementAt(1);
        mark.Faded.Should().BeTrue();
        mark.Cut.Should().BeTrue();
        mark.Upper.Should().BeLessThan(chart.Vertical.To).And.BeLessThan(0.1);
        chart.Caption.Text.Should().Contain("fewer than 100").And.Contain("beyond the edge");
    }

    [Fact]
    public void Forty_levels_are_drawn_and_the_caption_says_which()
    {
        var points = Enumerable.Range(0, 537).Select(index => Level($"W{index:000}", 1000, 0.001 * (index % 7), flagged: index == 400)).ToImmutableArray();
        var chart = LevelChart.Of(Frame, points, 0.003, "sites");
        chart.Marks.OfType<IntervalMark>().Should().HaveCount(40);
        chart.Caption.Text.Should().Contain("40 of 537 sites").And.Contain("the table has all");
        chart.Marks.OfType<LabelMark>().Should().Contain(label => label.Text == "flagged");
        LevelChart.Shown(points).Should().Contain(point => point.Name == "W400");
    }

    [Fact]
    public void A_flagged_level_is_a_mark_of_another_tone_with_words_beside_it()
    {
        var chart = LevelChart.Of(Frame, [Level("A", 1000, 0.01), Level("B", 1000, 0.1, flagged: true)], 0.05, "lots");
        chart.Marks.OfType<IntervalMark>().Single(mark => mark.Tone == Tone.Alert).At.Should().Be(1, "the highest stands on top");
        chart.Marks.OfType<LabelMark>().Single(label => label.Text == "flagged").X.Should().BeApproximately(0.11, 1e-12);
        chart.Vertical.Ticks.Select(tick => (tick.Position, tick.Label)).Should().Equal((1, "B"), (0, "A"));
    }

    [Fact]
    public void One_wide_line_is_cut_and_does_not_flatten_the_others()
    {
        var wide = new ChartPoint(4000, 0.014, 0.001, 0.096, "A", Flagged: true);
        var chart = LevelChart.Of(Frame, [wide, Level("B", 4000, 0.002)], 0.002, "lots");
        var mark = chart.Marks.OfType<IntervalMark>().Single(mark => mark.Tone == Tone.Alert);
        mark.Cut.Should().BeTrue();
        mark.Upper.Should().BeApproximately(2.5 * 0.014 * 1.03, 1e-12);
        chart.Caption.Text.Should().Contain("go on beyond the edge");
    }

    [Fact]
    public void A_level_beyond_the_axis_is_told_in_words()
    {
        var chart = LevelChart.Of(Frame, [Level("A", 5000, 0.01), Level("B", 3, 0.667)], 0.01, "lots");
        chart.Marks.OfType<LabelMark>().Should().Contain(label => label.Text == "beyond: 66.7 % of 3");
    }

    [Fact]
    public void Parts_of_a_bar_add_up_to_the_whole_and_each_is_named()
    {
        var chart = StackChart.Of(Frame,
        [
            new StackRow("positive", [new("confirmed", 60, Tone.Main), new("refuted", 39, Tone.Alert), new("pending", 1, Tone.Waiting)]) { Settled = new ChartPoint(100, 0.99, 0.94, 0.998) },
            new StackRow("inconclusive", []),
        ]);
        var bars = chart.Marks.OfType<BarMark>().ToArray();
        bars.Should().HaveCount(3);
        bars[^1].To.Should().BeApproximately(1, 1e-12);
        bars.Zip(bars.Skip(1)).Should().AllSatisfy(pair => pair.First.To.Should().Be(pair.Second.From));
        chart.Marks.OfType<LabelMark>().Select(label => label.Text).Should().Equal("confirmed 60", "refuted 39", "narrow parts, left to right: pending 1");
        chart.Vertical.Ticks.Should().ContainSingle().Which.Label.Should().Be("positive (100)");
        var settled = chart.Marks.OfType<IntervalMark>().Should().ContainSingle().Subject;
        (settled.Estimate, settled.Lower, settled.Upper).Should().Be((0.99, 0.94, 0.998));
        settled.Estimate.Should().BeApproximately(bars[1].To, 1e-12, "it ends where the undecided part begins");
        (settled.At > bars[0].At + (bars[0].Thickness / 2) && settled.At < chart.Vertical.To).Should().BeTrue("it stands above its bar");
        chart.Caption.Text.Should().Contain("settled share with its limits");
    }

    [Fact]
    public void Curves_carry_limits_names_and_the_programs_place()
    {
        var line = new CurveLine("a positive is right", Tone.Main, [.. Enumerable.Range(0, 38).Select(index =>
        {
            var prevalence = Math.Pow(10, -4 + (index / 10.0));
            double Value(double specificity) => 0.7 * prevalence / ((0.7 * prevalence) + ((1 - specificity) * (1 - prevalence)));
            return (prevalence, Value(0.99), Value(0.98), Value(0.995));
        })]);
        var chart = CurveChart.Of(Frame, [line], [("external prevalence", 0.01)]);
        chart.Horizontal.Scale.Should().Be(AxisScale.Logarithmic);
        chart.Marks.OfType<BandMark>().Should().ContainSingle();
        // 0.7 * 0.01 / (0.7 * 0.01 + 0.01 * 0.99), closed form.
        var dot = chart.Marks.OfType<DotMark>().Single();
        dot.X.Should().Be(0.01);
        dot.Y.Should().BeApproximately(0.007 / (0.007 + 0.0099), 1e-9);
        chart.Marks.OfType<LabelMark>().Select(label => label.Text).Should().BeEquivalentTo("external prevalence 1.00 %", "41.4 %", "a positive is right");
    }

    [Theory]
    [InlineData("North", "North")]
    [InlineData("a\tb\nc", "a b c")]
    [InlineData("\u202Etxt", " txt")]
    [InlineData("1234567890123456789012345", "1234567890123456789012…")]
    public void Names_fit_into_a_picture(string name, string shown) => ChartText.Name(name).Should().Be(shown);

    private static ChartPoint Period(int week, long tests, double estimate, double? upper = null) =>
        new(tests, estimate, estimate * 0.9, upper ?? estimate * 1.1, Start: new DateOnly(2026, 1, 5).AddDays(7 * week));

    private static ChartPoint Level(string name, long runs, double estimate, bool flagged = false) => new(runs, estimate, estimate * 0.9, estimate * 1.1, name, Flagged: flagged);
}
