using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests.Charts;

public class SharedScalesTests
{
    [Theory]
    [InlineData(0.05, new[] { 0.05, 0.04, 0.02 })]
    [InlineData(0.05, new[] { 0.5, 0.05, 0.04, 0.02 })]
    [InlineData(0.05, new[] { 0.05, 0.04, 0.001 })]
    [InlineData(0.9, new[] { 0.9, 0.01 })]
    [InlineData(0.03, new[] { 0.03, 0.01 })]
    public void The_common_scale_is_that_which_most_pictures_can_have_and_of_such_the_largest(double common, double[] tops) =>
        SharedScales.Common([.. tops]).Should().Be(common);

    [Fact]
    public void Pictures_of_one_quantity_end_at_the_same_value_and_others_are_left_alone()
    {
        var (weeks, sites, other) = (Weeks("a", 0.02), Sites("b", 0.03), Weeks("c", 0.01, ""));
        var drawn = Draw(weeks, sites, other);

        var top = sites.Scale!.Top;
        drawn[0].Vertical.Ticks[^1].Position.Should().BeLessThanOrEqualTo(top);
        drawn[0].Vertical.To.Should().BeApproximately(top * 1.12, 1e-12, "words stand above the scale");
        drawn[1].Horizontal.To.Should().BeApproximately(top, 1e-12);
        drawn[0].Marks.OfType<IntervalMark>().Select(mark => mark.Estimate).Should().Equal(weeks.Marks.OfType<IntervalMark>().Select(mark => mark.Estimate), "only the scale is another");
        drawn[2].Should().BeSameAs(other);
        drawn.Should().OnlyContain(chart => !chart.Caption.Text.Contains("scale", StringComparison.Ordinal));
    }

    [Fact]
    public void A_picture_that_would_be_flat_keeps_its_scale_and_says_so()
    {
        var drawn = Draw(Weeks("a", 0.02), Weeks("b", 0.02), Weeks("c", 0.2));

        drawn[2].Vertical.To.Should().BeGreaterThan(3 * drawn[0].Vertical.To);
        drawn[2].Caption.Text.Should().MatchRegex("Its scale is its own: it ends near [\\d.]+ %, that of the other pictures of positivity near [\\d.]+ %\\.$");
        drawn[2].Caption.Sentences[^1].Figures.Should().OnlyContain(figure => figure.Id == Caption.OfThePage);
        drawn[0].Caption.Text.Should().NotContain("scale");
    }

    [Fact]
    public void What_a_report_leaves_out_decides_no_scale()
    {
        var groups = Groups(Weeks("a", 0.02), Weeks("b", 0.04));

        SharedScales.Of(groups, chart => chart.Id == "a").Single().Pages.Single().Charts.Should().Equal(groups.Single().Pages.Single().Charts);
    }

    [Fact]
    public void In_a_report_pictures_of_one_quantity_end_alike_or_say_that_they_do_not()
    {
        var quantities = 0;
        foreach (var (name, findings) in Programs.All)
        {
            var charts = SharedScales.Of(AllPages.Of(findings), _ => true).SelectMany(group => group.Pages).SelectMany(page => page.Charts).Where(chart => chart.Scale is not null);
            foreach (var same in charts.GroupBy(chart => chart.Scale!.Quantity).Where(same => same.Count() > 1))
            {
                quantities++;
                var together = same.Where(chart => !chart.Caption.Text.Contains("Its scale is its own", StringComparison.Ordinal)).ToList();
                together.Should().NotBeEmpty(name);
                together.Select(chart => Ticks(chart)).Distinct().Should().ContainSingle($"{name}: {same.Key}: {string.Join(", ", same.Select(chart => chart.Id))}");
            }
        }

        quantities.Should().BeGreaterThan(5);
    }

    private static string Ticks(Chart chart) => string.Join(' ', (chart.Vertical.Ticks.Any(tick => tick.Label.EndsWith('%')) ? chart.Vertical : chart.Horizontal).Ticks.Select(tick => tick.Label));

    private static Chart[] Draw(params Chart[] charts) => [.. SharedScales.Of(Groups(charts), _ => true).Single().Pages.Single().Charts];

    private static ImmutableArray<PageGroup> Groups(params Chart[] charts) =>
        [new("g", "Group", [new Page("p", "Page", Programs.Published.Ledger, "", "") { Charts = [.. charts] }])];

    private static Chart Weeks(string id, double highest, string quantity = "positivity") => PeriodChart.Of(
        new ChartFrame(id, "Title", "See.", "Described.", "table") { Quantity = quantity },
        [.. Enumerable.Range(0, 4).Select(week => new ChartPoint(900, highest * (week + 1) / 4, highest * week / 5, highest * (week + 1.5) / 4, Start: new DateOnly(2026, 1, 5).AddDays(7 * week)))], null, 7);

    private static Chart Sites(string id, double highest) => LevelChart.Of(
        new ChartFrame(id, "Title", "See.", "Described.", "table") { Quantity = "positivity" },
        [.. Enumerable.Range(0, 4).Select(site => new ChartPoint(900, highest * (site + 1) / 4, highest * site / 5, highest * (site + 1.5) / 4, $"S{site}", Flagged: site == 3))], null, "sites");
}
