using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Surroundings;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Evaluation.Tests.Trends;

public class TrendSeriesTests
{
    [Fact]
    public void A_week_that_is_not_over_is_shown_and_never_fitted()
    {
        var without = new ProgramSketch().Weeks(12, _ => 5).Trends();
        var with = new ProgramSketch().Weeks(12, _ => 5).Weeks(1, _ => 60, first: 12, days: 3).Trends();

        var last = with.Points.Last(point => point.Measure == TrendMeasure.Positivity);
        last.Complete.Should().BeFalse();
        last.Events.Should().BeGreaterThan(50);
        last.Smooth.Should().BeNull();
        last.SmoothUndefined.Should().Contain("not complete");
        Whole(with).GrowthPerWeek.Should().Be(Whole(without).GrowthPerWeek);
        with.Text().Should().Contain("The last 1 week of positivity is not complete, so it is shown and not fitted.");
    }

    [Fact]
    public void A_week_that_ends_on_Friday_is_over_where_nobody_tests_on_weekends()
    {
        var trends = new ProgramSketch().Weeks(12, _ => 5).Trends();

        trends.Points.Where(point => point.Measure == TrendMeasure.Positivity).Should().OnlyContain(point => point.Complete);
        trends.Series.Should().OnlyContain(series => series.PeriodsIncomplete == 0 || series.Measure == TrendMeasure.PredictiveValue);
        trends.Text().Should().Contain("a week, with limits on both sides of no change (", "limits that hold no change are not to be read as 'nothing changed within the limits'");
    }

    [Fact]
    public void A_week_that_ends_on_Friday_is_not_over_where_people_test_on_weekends_unless_the_program_file_says_so()
    {
        var sketch = new ProgramSketch().Weeks(8, _ => 7, days: 7).Weeks(1, _ => 5, first: 8, days: 5);

        sketch.Trends().Points.Last(point => point.Measure == TrendMeasure.Positivity).Complete.Should().BeFalse();
        var stated = new ProgramSettings { DataAsOf = new StatedMoment(TrendSketch.Monday(9).ToDateTime(default).AddMinutes(-1), null) };
        sketch.Trends(stated).Points.Last(point => point.Measure == TrendMeasure.Positivity).Complete.Should().BeTrue();
    }

    [Fact]
    public void Positives_that_wait_end_the_series_of_predictive_value_and_are_no_fall()
    {
        var trends = new ProgramSketch()
            .Weeks(12, _ => 5, followUp: FollowUp.Confirmed).Weeks(12, _ => 5, site: "South", followUp: FollowUp.Refuted)
            .Weeks(1, _ => 5, first: 12, followUp: FollowUp.Pending).Weeks(1, _ => 5, site: "South", first: 12, followUp: FollowUp.Refuted).Trends();

        var last = trends.Points.Last(point => point.Measure == TrendMeasure.PredictiveValue);
        (last.Complete, last.Pending, last.Trials, last.Events).Should().Be((false, 5, 5, 0));
        trends.Points.Last(point => point.Measure == TrendMeasure.Positivity).Complete.Should().BeTrue();
        trends.Leading(TrendMeasure.PredictiveValue)!.FittedTo.Should().Be(TrendSketch.Monday(12).AddDays(-1));
        trends.Text().Should().Contain("since 5 positives still wait for a result: that is no fall.");
    }

    [Fact]
    public void People_who_are_tested_once_divide_no_counts_however_few_there_are_in_a_week()
    {
        var trends = new ProgramSketch().Weeks(12, _ => 1, followUp: FollowUp.Confirmed).Weeks(12, _ => 1, followUp: FollowUp.Refuted).Trends();

        var value = trends.Leading(TrendMeasure.PredictiveValue)!;
        value.Deflation.Should().Be(1, "two people, of whom one is confirmed, scatter as two of one trial do");
        trends.Text().Should().NotContain("the same people are tested again");
    }

    [Fact]
    public void A_burst_of_a_flagged_lot_is_no_rise_of_infection()
    {
        var sketch = new ProgramSketch();
        for (var site = 0; site < 4; site++) sketch.Weeks(20, week => 2 + (week % 2), site: "S" + site, followUp: FollowUp.Refuted);
        var findings = Evaluator.Evaluate(sketch.Weeks(4, week => 8 * (week - 15), site: "S1", lot: "BAD", tests: 40, first: 16, followUp: FollowUp.Refuted).Tally(), new ProgramSettings());

        findings.Lots.Single(lot => lot.Flag.HasFlag(Flag.Refuted)).Lot.Should().Be("BAD");
        var leading = findings.Trends.Leading(TrendMeasure.Positivity)!;
        leading.Basis.Should().Be(TrendBasis.WithoutFlaggedLots);
        leading.RunsLeftOut.Should().Be(4 * 5 * 40);
        findings.Trends.Growth.Where(row => row.Measure == TrendMeasure.Positivity && row.Leads && row.By == Grouping.Program).Should().OnlyContain(row => row.Direction == GrowthDirection.CannotTell);
        findings.Trends.Text().Should().Contain("This leaves out the 800 runs of lots that are flagged for refuted positives; with them").And.NotContain("Positivity rises");
    }

    [Fact]
    public void Runs_because_of_an_outbreak_do_not_lead()
    {
        var tally = new ProgramSketch().Weeks(12, _ => 5).Tally();
        var from = TrendSketch.Monday(10);
        Occasion At(DateOnly day) => day >= from ? Occasion.Outbreak : Occasion.Routine;
        var marked = Tally.FromCells(tally.Cells with
        {
            Screens = [.. tally.Cells.Screens.Select(cell => cell with { Occasion = At(cell.Day) })],
            Operators = [.. tally.Cells.Operators.Select(cell => cell with { Occasion = At(cell.Day) })],
            Notable = [.. tally.Cells.Notable.Select(run => run with { Occasion = At(DateOnly.FromDateTime(run.Minute)) })],
        });

        var trends = Evaluator.Evaluate(marked, new ProgramSettings()).Trends;

        trends.Leading(TrendMeasure.Positivity)!.Basis.Should().Be(TrendBasis.Routine);
        trends.Leading(TrendMeasure.Positivity)!.RunsLeftOut.Should().Be(2 * 5 * 100);
        trends.Text().Should().Contain("the 1,000 runs that were taken because of an outbreak");
    }

    [Fact]
    public void Weeks_without_tests_keep_their_place()
    {
        var trends = new ProgramSketch().Weeks(8, _ => 10).Weeks(8, _ => 10, first: 14).Trends();

        var points = trends.Points.Where(point => point.Measure == TrendMeasure.Positivity).ToList();
        points.Count.Should().Be(22);
        var empty = points.Single(point => point.PeriodStart == TrendSketch.Monday(10));
        (empty.Trials, empty.Share.Estimate, empty.Complete).Should().Be((0L, null, true));
        (empty.Smooth, empty.SmoothUndefined).Should().Be((null, "nothing was counted"));
        Whole(trends).Points.Should().Be(16);
        Math.Abs(Whole(trends).GrowthPerWeek.Estimate!.Value).Should().BeLessThan(1e-6);
    }

    [Fact]
    public void No_positive_at_all_is_said()
    {
        var trends = new ProgramSketch().Weeks(12, _ => 0).Trends();

        trends.Text().Should().Contain("No event was counted in 6,000 trials, so positivity has no trend.");
        Whole(trends).GrowthPerWeek.EstimateUndefined.Should().Contain("fewer than 10 events");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_few_weeks_make_no_claim(int weeks)
    {
        var trends = new ProgramSketch().Weeks(weeks, _ => 5).Trends();

        trends.Series.Should().NotBeEmpty();
        trends.Text().Should().Contain("Whether positivity rises or falls cannot be told");
    }

    [Fact]
    public void Nothing_counted_is_said()
    {
        var trends = new ProgramSketch().Trends();

        trends.Series.Should().BeEmpty();
        trends.Sentences.Single().Text.Should().Be("Nothing was counted, so there is no trend.");
        trends.Tables.Should().OnlyContain(table => table.RowCount == 0);
    }

    [Fact]
    public void Very_many_days_are_taken_together_and_it_is_said()
    {
        var trends = new ProgramSketch { Period = ReportPeriod.Day }.Weeks(60, _ => 5).Trends();

        trends.Points.Should().OnlyContain(point => point.Period == "week-for-day");
        trends.Leading(TrendMeasure.Positivity)!.PeriodsAre.Should().Be("week");
    }

    [Fact]
    public void The_rate_outside_is_the_mean_over_the_days_of_a_period_and_none_where_a_day_has_none()
    {
        var community = new CommunitySettings
        {
            Source = "fictional authority",
            Values = [new CommunityValue(TrendSketch.Monday(1), 0.0133, null, null), new CommunityValue(TrendSketch.Monday(2).AddDays(3), 0.02, null, null)],
            Until = TrendSketch.Monday(9),
        };
        var trends = new ProgramSketch().Weeks(12, _ => 5).Trends(new ProgramSettings { Community = community });

        var points = trends.Points.Where(point => point.Measure == TrendMeasure.Positivity).ToList();
        points[0].Community.Should().BeNull();
        points[0].CommunityUndefined.Should().NotBeNull();
        points[1].Community.Should().Be(0.0133, "all days of the week have it as it was written");
        points[2].Community.Should().BeApproximately(((3 * 0.0133) + (4 * 0.02)) / 7, 1e-15);
        points[9].Community.Should().BeNull();
        trends.Text().Should().Contain("The rate outside (fictional authority) went from 1.33 % to 2.00 %");
    }

    [Fact]
    public void Keys_are_each_of_one_row()
    {
        foreach (var program in ExamplePrograms.All)
        {
            var trends = ExamplePrograms.Evaluated(program.Name).Trends;
            trends.Points.Select(row => row.Key).Should().OnlyHaveUniqueItems();
            trends.Growth.Select(row => row.Key).Should().OnlyHaveUniqueItems();
            trends.Changes.Select(row => row.Key).Should().OnlyHaveUniqueItems();
            trends.Weekdays.Select(row => row.Key).Should().OnlyHaveUniqueItems();
        }
    }

    internal static GrowthRow Whole(TrendFindings trends, TrendMeasure measure = TrendMeasure.Positivity) =>
        trends.Growth.Single(row => row.Measure == measure && row.Leads && row.By == Grouping.Program && row.Segment == GrowthSegment.WholeSpan);
}
