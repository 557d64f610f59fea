using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Surroundings;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Changes;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Evaluation.Tests.Trends;

public class TrendGrowthTests
{
    [Fact]
    public void A_tenth_more_each_week_is_found_with_its_doubling_time()
    {
        var row = TrendSeriesTests.Whole(Rising().Trends());

        row.Direction.Should().Be(GrowthDirection.Rises);
        row.GrowthPerWeek.Estimate.Should().BeApproximately(0.10, 0.005);
        row.GrowthPerWeek.Lower.Should().BeLessThan(0.10);
        row.GrowthPerWeek.Upper.Should().BeGreaterThan(0.10);
        // ln 2 / ln 1.1 weeks.
        row.Doubling.Estimate.Should().BeApproximately(50.9, 2.5);
        row.Halving.EstimateUndefined.Should().Be("it does not fall");
        Rising().Trends().Text().Should().Contain("Positivity rises: over the complete weeks from").And.Contain("at that pace it doubles in ");
    }

    [Fact]
    public void A_tenth_less_each_week_falls_with_its_halving_time()
    {
        var trends = new ProgramSketch().Weeks(16, week => (int)Math.Round(100 * Math.Pow(0.9, week)), tests: 1_000).Trends();

        TrendSeriesTests.Whole(trends).Direction.Should().Be(GrowthDirection.Falls);
        TrendSeriesTests.Whole(trends).Doubling.EstimateUndefined.Should().Be("it does not rise");
        trends.Text().Should().Contain("Positivity falls").And.Contain("it halves in ");
    }

    [Fact]
    public void A_wave_that_came_and_went_is_told_with_the_day_of_its_turn()
    {
        var trends = new ProgramSketch().Weeks(30, week => (int)Math.Round(20 * Math.Exp(week < 16 ? 0.12 * week : (0.12 * 16) - (0.15 * (week - 16)))), tests: 1_000).Trends();

        var change = trends.Changes.Single(row => row is { Measure: TrendMeasure.Positivity, Kind: TrendChangeKind.Found });
        change.On.DayNumber.Should().BeCloseTo(TrendSketch.Monday(16).DayNumber, 14u);
        change.OnLower.Should().BeOnOrBefore(change.On);
        change.SlopeBefore.Estimate.Should().BePositive();
        change.SlopeAfter.Estimate.Should().BeNegative();
        trends.Growth.Count(row => row is { Measure: TrendMeasure.Positivity, Segment: GrowthSegment.BetweenChanges }).Should().Be(2);
        trends.Growth.Should().Contain(row => row.Segment == GrowthSegment.MeanOfSegments);
        trends.Text().Should().Contain("Over the whole span positivity changed its course: it rose (").And.Contain("and since then it fell (");
    }

    [Fact]
    public void Events_at_the_end_only_rise_with_one_limit()
    {
        var trends = new ProgramSketch().Weeks(20, week => week == 19 ? 40 : 0, tests: 200).Trends();

        var row = TrendSeriesTests.Whole(trends);
        row.GrowthPerWeek.Estimate.Should().BeNull();
        row.GrowthPerWeek.Lower.Should().BePositive();
        row.Direction.Should().Be(GrowthDirection.Rises);
        trends.Text().Should().Contain("Positivity rises: ").And.Contain(" a week at least.");
    }

    [Fact]
    public void A_share_that_may_be_near_one_does_not_double()
    {
        var trends = new ProgramSketch().Weeks(16, week => 3 + week, followUp: FollowUp.Confirmed).Weeks(16, week => 20 - week, site: "South", followUp: FollowUp.Refuted).Trends();

        var row = TrendSeriesTests.Whole(trends, TrendMeasure.PredictiveValue);
        row.Direction.Should().Be(GrowthDirection.Rises);
        (row.Doubling.Estimate, row.Doubling.EstimateUndefined).Should().Be((null, "a share that may be near one does not double"));
    }

    [Fact]
    public void A_dated_change_comes_with_its_level_and_the_caution()
    {
        var settings = new ProgramSettings { Changes = [new ChangeSettings(TrendSketch.Monday(12), "Dorrin card introduced", [])] };
        var trends = new ProgramSketch().Weeks(24, week => week < 12 ? 30 : 15, tests: 500).Trends(settings);

        var row = trends.Changes.Single(row => row is { Measure: TrendMeasure.Positivity, Kind: TrendChangeKind.Dated });
        row.LevelRatio.Estimate.Should().BeApproximately(0.5, 0.03);
        row.LevelRatio.Upper.Should().BeLessThan(1);
        row.SlopeBefore.Estimate.Should().BeApproximately(0, 0.01);
        trends.Text().Should().Contain("After “Dorrin card introduced” (2026-03-30) the odds of a positive test were").And.Contain("lower than chance explains, also when it is allowed for how many jumps are looked for (p ")
            .And.Contain("Whatever else changed at that time is in these figures too: they do not show that it was the change's doing.");
    }

    [Fact]
    public void A_change_of_some_sites_is_held_against_the_others()
    {
        var settings = new ProgramSettings { Changes = [new ChangeSettings(TrendSketch.Monday(12), "new reader", ["N*"])] };
        var trends = new ProgramSketch().Weeks(24, week => week < 12 ? 30 : 15, tests: 500).Weeks(24, _ => 20, tests: 500, site: "South").Trends(settings);

        trends.Changes.Single(row => row is { Measure: TrendMeasure.Positivity, Kind: TrendChangeKind.Dated }).LevelRatio.Estimate.Should().BeApproximately(0.5, 0.03);
        trends.Changes.Single(row => row is { Measure: TrendMeasure.Positivity, Kind: TrendChangeKind.DatedElsewhere }).LevelRatio.Estimate.Should().BeApproximately(1, 0.03);
        trends.Text().Should().Contain("At the other sites they were");
    }

    [Fact]
    public void A_change_too_near_the_end_cannot_be_told()
    {
        var settings = new ProgramSettings { Changes = [new ChangeSettings(TrendSketch.Monday(22), "new rule", []), new ChangeSettings(TrendSketch.Monday(90), "another", [])] };
        var trends = new ProgramSketch().Weeks(24, _ => 30, tests: 500).Trends(settings);

        trends.Text().Should().Contain("What “new rule” (2026-06-08) did to positivity cannot be told: fewer than 4 complete weeks were counted after it").And.Contain("“another”");
    }

    [Fact]
    public void A_site_that_is_tested_on_Mondays_makes_no_pattern_of_Mondays()
    {
        var sketch = new ProgramSketch().Weeks(20, _ => 5, tests: 100);
        for (var week = 0; week < 20; week++) sketch.Runs(Outcome.Positive, 20, FollowUp.Unverified, "High", day: 7 * week).Runs(Outcome.Negative, 80, site: "High", day: 7 * week);

        var monday = sketch.Trends().Weekdays.Single(row => row.Measure == TrendMeasure.Positivity && row.Weekday == "Monday");

        monday.Share.Estimate.Should().BeGreaterThan(0.05);
        monday.PValue.Should().BeGreaterThan(0.5);
        monday.OddsRatio.Should().BeApproximately(1, 0.2);
    }

    [Fact]
    public void A_pattern_of_Mondays_is_told()
    {
        var sketch = new ProgramSketch().Weeks(20, _ => 5, tests: 100);
        for (var week = 0; week < 20; week++) sketch.Runs(Outcome.Positive, 4, FollowUp.Unverified, day: 7 * week);

        sketch.Trends().Text().Should().Contain("Positivity differs by the day of the week more than chance makes it").And.Contain("most on Monday");
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Words_and_figures_are_the_same_in_every_culture(string culture)
    {
        string All()
        {
            var trends = Rising().Trends(new ProgramSettings { Changes = [new ChangeSettings(TrendSketch.Monday(8), "i", ["N*"])] });
            return trends.Text() + string.Join('\n', trends.Tables.SelectMany(table => Enumerable.Range(0, table.RowCount).Select(row =>
                string.Join('|', Enumerable.Range(0, table.Columns.Length).Select(column => table.CellAt(row, column).ToString() + Rounding.Print(table.CellAt(row, column), table.Columns[column].Unit))))));
        }

        var (before, invariant) = (CultureInfo.CurrentCulture, All());
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            All().Should().Be(invariant);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static ProgramSketch Rising() => new ProgramSketch().Weeks(16, week => (int)Math.Round(20 * Math.Pow(1.1, week)), tests: 1_000);
}
