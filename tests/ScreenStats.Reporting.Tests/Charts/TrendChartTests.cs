using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Trends;

namespace ScreenStats.Reporting.Tests.Charts;

public class TrendChartTests
{
    private static readonly ChartFrame Frame = new("id", "Title", "See.", "Described.", "trends");
    private static readonly DateOnly First = new(2026, 1, 5);

    [Fact]
    public void Every_period_has_its_limits_and_the_line_its_band()
    {
        var chart = TrendChart.Of(Frame, new TrendSeries(Weeks(8)) { Smooth = Line(8) });

        chart.Marks.OfType<LineMark>().Count(line => line.Points.Length == 2 && line.Points[0].X == line.Points[1].X && line.Tone == Tone.Waiting).Should().Be(8);
        chart.Marks.OfType<BandMark>().Should().Contain(band => band.Points.Length == 8);
        Words(chart).Should().Contain("smooth", "a line is named where it runs");
        chart.Caption.Text.Should().Contain("Dot and upright line: a week with its limits. Thick line: smooth, with its band.");
    }

    [Fact]
    public void A_period_that_is_not_over_is_grey_and_the_words_say_so()
    {
        var dots = Weeks(6);
        var chart = TrendChart.Of(Frame, new TrendSeries(dots.SetItem(5, dots[5] with { Complete = false })));

        chart.Marks.OfType<DotMark>().Where(dot => dot.Shape == DotShape.Hollow).Should().OnlyContain(dot => dot.Tone == Tone.Quiet);
        chart.Marks.OfType<BandMark>().Single(band => band.Tone == Tone.Unknown).Points[0].X.Should().Be(dots[5].Start.DayNumber);
        Words(chart).Should().Contain("not complete");
        chart.Caption.Text.Should().Contain("a week that is not over yet");
    }

    [Fact]
    public void Positives_that_still_wait_are_no_fall()
    {
        var dots = Weeks(6);
        var chart = TrendChart.Of(Frame, new TrendSeries([.. dots.Take(4), dots[4] with { Pending = 3 }, dots[5] with { Pending = 9 }]));

        chart.Marks.OfType<BandMark>().Single(band => band.Tone == Tone.Unknown).Points[0].X.Should().Be(dots[4].Start.DayNumber);
        Words(chart).Should().Contain("follow-up still waiting");
        chart.Caption.Text.Should().Contain("12 there still wait for follow-up, which is no fall");
    }

    [Fact]
    public void Dated_changes_are_named_dashed_lines_and_found_ones_have_a_diamond_with_their_interval()
    {
        var found = First.AddDays(40);
        var chart = TrendChart.Of(Frame, new TrendSeries(Weeks(20))
        {
            Changes = [new(First.AddDays(80), "New device"), new(found, "", found.AddDays(-10), found.AddDays(12))],
            Segments = [new(First, found, "+6 % a week", "+6"), new(found, First.AddDays(139), "−9 % a week", "−9")],
        });

        chart.Marks.OfType<LineMark>().Should().ContainSingle(line => line.Dashed).Which.Points[0].X.Should().Be(First.AddDays(80).DayNumber);
        chart.Marks.OfType<DotMark>().Should().ContainSingle(dot => dot.Shape == DotShape.HollowDiamond).Which.X.Should().Be(found.DayNumber);
        chart.Marks.OfType<BandMark>().Single(band => band.Tone == Tone.Open).Points.Select(point => point.X).Should().Equal(found.DayNumber - 10, found.DayNumber + 12);
        Words(chart).Should().Contain(["New device", "slope changes 14 Feb 2026", "+6 % a week", "−9 % a week"]);
    }

    [Fact]
    public void Many_changes_are_numbers_that_the_caption_spells_out_in_order_of_time()
    {
        var chart = TrendChart.Of(Frame, new TrendSeries(Weeks(30)) { Changes = [.. Enumerable.Range(1, 9).Select(index => new TrendChange(First.AddDays(15 * index), $"A rule with a long name, number {index}"))] });

        Words(chart).Should().Contain(["1", "9"]);
        chart.Caption.Text.Should().Contain("1: A rule with a long name, number 1, 20 Jan 2026; 2: ");
    }

    [Fact]
    public void Two_changes_on_one_day_are_both_told()
    {
        var chart = TrendChart.Of(Frame, new TrendSeries(Weeks(30)) { Changes = [new(First.AddDays(60), "New device"), new(First.AddDays(60), "Twice a week")] });

        Words(chart).Should().Contain(["1", "2"]);
        chart.Caption.Text.Should().Contain("1: New device, 6 Mar 2026; 2: Twice a week, 6 Mar 2026.");
    }

    [Fact]
    public void The_community_is_a_second_kind_of_line_and_one_on_another_scale_says_how_it_is_drawn()
    {
        var community = new TrendCommunity("community", [(First, 120), (First.AddDays(28), 240)], 0.0001);
        var chart = TrendChart.Of(Frame, new TrendSeries(Weeks(8)) { Community = community });

        chart.Marks.OfType<LineMark>().Where(line => line.Dashed && line.Points.Length > 2).Should().ContainSingle().Which.Points.Select(point => Math.Round(point.Y, 9)).Should().Equal(0.012, 0.012, 0.024, 0.024);
        chart.Caption.Text.Should().Contain("compare the shape, not the height");
    }

    [Fact]
    public void Five_years_of_days_are_dots_and_a_line_and_the_picture_stays_small()
    {
        var dots = Enumerable.Range(0, 1826).Select(day => new TrendDot(First.AddDays(day), First.AddDays(day + 1), 0.01 + (0.0001 * (day % 37)), 0, 0.05)).ToImmutableArray();
        var chart = TrendChart.Of(Frame, new TrendSeries(dots) { Period = ("day", "days"), Smooth = Line(260) });

        chart.Marks.OfType<LineMark>().Should().NotContain(line => line.Tone == Tone.Waiting, "limits of each day would be a wall");
        chart.Caption.Text.Should().Contain("Each day is a dot; its limits stand in the table.");
        chart.Vertical.To.Should().BeLessThan(0.04);
        ChartRenderer.Svg(chart).Length.Should().BeLessThan(300_000);
    }

    [Fact]
    public void Days_of_the_week_stand_from_Monday_on()
    {
        var chart = WeekdayChart.Of(Frame, [new(900, 0.01, 0.008, 0.013, "Mon"), new(40, 0.02, 0.001, 0.2, "Sat")], 0.01);

        chart.Horizontal.Ticks.Select(tick => tick.Label).Should().Equal("Mon", "Sat");
        chart.Marks.OfType<IntervalMark>().Select(mark => (mark.Faded, mark.Cut)).Should().Equal((false, false), (true, true));
        chart.Caption.Text.Should().Contain("fewer than 100");
    }

    private static string[] Words(Chart chart) => [.. chart.Marks.OfType<LabelMark>().Select(label => label.Text)];

    private static ImmutableArray<TrendDot> Weeks(int many) => [.. Enumerable.Range(0, many).Select(week => new TrendDot(First.AddDays(7 * week), First.AddDays(7 + (7 * week)), 0.01, 0.005, 0.015))];

    private static TrendLine Line(int many) => new([.. Enumerable.Range(0, many).Select(week => (First.DayNumber + 3.5 + (7 * week), 0.01, 0.008, 0.012))]);
}
