using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.ControlCharts;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.MovingAverages;
using ScreenStats.Statistics.Monitoring.RareEvents;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Evaluation.Tests.ControlCharts;

public class ControlChartAnalysisTests
{
    [Fact]
    public void The_program_by_week_is_the_exact_chart_of_its_unusable_runs()
    {
        var finding = Of(Weeks(20, week => week == 12 ? 30 : 3)).Single("invalid-runs/share/week");

        var chart = ProportionChart.Exact(Enumerable.Range(0, 20).Select(week => new Subgroup(week == 12 ? 30 : 3, 300)), rules: RunRules.All);
        finding.Limits.Should().Be("exact");
        finding.Points.Select(point => (point.Lower, point.Upper, point.Score)).Should().Equal(chart.Points.Select(point => (point.Lower, point.Upper, point.Score)));
        finding.Points.Where(point => point.Outside).Select(point => point.Name).Should().Equal("2026-03-30");
        finding.PointsAbove.Should().Be(1);
        finding.Why.Should().StartWith("only a few weeks vary by more than chance");
        finding.Sentence.Text.Should().StartWith("Whole program: unusable runs are above the limits in 1 of 20 weeks; the rest lie within");
    }

    [Fact]
    public void Limits_are_widened_where_weeks_vary_all_over_and_the_average_with_them()
    {
        var findings = Of(Weeks(26, week => week % 2 == 0 ? 2 : 14));
        var shares = findings.Single("invalid-runs/share/week");
        var average = findings.Single("invalid-runs/moving-average/week");

        shares.Limits.Should().Be("widened");
        shares.SigmaZ.Should().BeGreaterThan(2);
        shares.PointsAbove.Should().Be(0);
        shares.Why.Should().Contain("not at a few of them only");
        shares.Sentence.Text.Should().Contain("widened limits");
        average.Limits.Should().Be("moving-average-widened");
        (average.Points[^1].Upper - average.Centre).Should().BeApproximately((shares.SigmaZ * Plain().Points[^1].Upper) - (shares.SigmaZ * average.Centre), 1e-12);

        static ControlChart Plain() => MovingAverageChart.Proportions(Enumerable.Range(0, 26).Select(week => new Subgroup(week % 2 == 0 ? 2 : 14, 300)));
    }

    [Fact]
    public void A_site_that_is_worse_all_the_time_is_above_the_others_and_does_not_make_them_look_good()
    {
        var findings = Of(Sites(20, (site, _) => site == "Dale" ? 30 : 3));
        var dale = findings.Single("invalid-runs/share/week/site/Dale");

        dale.CentreFrom.Should().Be("other-sites");
        dale.Centre.Should().Be(0.01);
        dale.PointsAbove.Should().Be(20);
        dale.Sentence.Text.Should().Be("Dale: unusable runs are above the limits around the other sites' rate in 20 of 20 weeks.");
        findings.Single("invalid-runs/share/site").Points.Where(point => point.Outside).Select(point => point.Name).Should().Equal("Dale");
        findings.Single("invalid-runs/share/week/site/Ash").PointsBelow.Should().Be(0);
        findings.Single("invalid-runs/moving-average/week/site/Dale").Sentence.Text.Should().Contain("no lasting shift");
        // The lots that Dale used look like the others without its runs.
        findings.Single("invalid-runs/share/lot").PointsAbove.Should().Be(0);
    }

    [Fact]
    public void A_faulty_lot_stands_out_among_lots_and_its_sites_do_not()
    {
        var findings = Of(FaultyLot());

        findings.Single("refuted/share/lot").Points.Where(point => point.Outside).Select(point => point.Name).Should().Equal("L9");
        findings.Single("refuted/share/site").PointsAbove.Should().Be(0);
        findings.Single("refuted/share/lot").Sentence.Text.Should().Contain("with 1 of 3 lots (L9)");
    }

    [Fact]
    public void The_last_weeks_are_incomplete_while_positives_wait_and_are_judged_only_for_too_many()
    {
        var sketch = Weeks(20, _ => 0, refuted: 6);
        sketch.Runs(Outcome.Positive, 5, FollowUp.Pending, day: 19 * 7).Runs(Outcome.Negative, 3000, day: 20 * 7).Runs(Outcome.Positive, 1, FollowUp.Pending, day: 20 * 7);
        var low = Of(sketch).Single("refuted/share/week");
        low.Points.Where(point => point.Incomplete).Select(point => point.Name).Should().Equal("2026-05-18", "2026-05-25");
        low.Points[^1].Estimate.Should().Be(0);
        low.Points[^1].Signals.Should().BeEmpty();
        low.Centre.Should().BeApproximately(6.0 / 300, 1e-12);
        low.Sentence.Text.Should().EndWith("2 of the last are not complete, since positives still wait for a result.");

        var high = Of(Weeks(20, _ => 0, refuted: 6).Runs(Outcome.Positive, 40, FollowUp.Refuted, day: 20 * 7).Runs(Outcome.Negative, 260, day: 20 * 7).Runs(Outcome.Positive, 1, FollowUp.Pending, day: 20 * 7)).Single("refuted/share/week");
        high.Points[^1].Should().Match<ChartPointFinding>(point => point.Incomplete && point.Outside && point.Above);
    }

    [Fact]
    public void Three_sigma_limits_come_on_request()
    {
        var settings = new ProgramSettings { Report = new ReportSettings { ControlLimits = ControlLimits.ThreeSigma } };
        var finding = Of(Weeks(20, _ => 3), settings).Single("invalid-runs/share/week");

        finding.Limits.Should().Be("three-sigma");
        finding.Points[0].Upper.Should().BeApproximately(0.01 + (3 * Math.Sqrt(0.01 * 0.99 / 300)), 1e-12);
        finding.Why.Should().EndWith("three-sigma limits as the program file asks");
        finding.Rules.Single(rule => rule.Rule == RunRule.OutsideLimits).RunLength.Should().Be(ShewhartRunLength.Proportion(300, 0.01, 0.01, ChartLimits.ThreeSigma).Value);
    }

    [Fact]
    public void Rules_are_in_words_each_with_its_own_run_length()
    {
        var finding = Of(Weeks(20, _ => 3)).Single("invalid-runs/share/week");

        finding.Rules.Select(rule => rule.Rule.Name()).Should().Equal("outside-limits", "two-of-three-far", "four-of-five-off", "eight-on-one-side");
        foreach (var rule in finding.Rules) rule.RunLength.Should().Be(RunRuleLength.Proportion([rule.Rule], 300, finding.Centre!.Value, finding.Centre!.Value).Value);
        finding.RunLength.Should().BeLessThan(finding.Rules.Min(rule => rule.RunLength)!.Value);
        MovingAverageRunLength.Normal(ChartRules.AverageWeight, ChartRules.AverageWidth).Value.Should().BeApproximately(ChartRules.AverageRunLength, 1);
    }

    [Fact]
    public void Refuted_positives_of_a_day_are_spread_evenly_over_its_tests_and_over_the_day()
    {
        var events = BetweenCharts.Events(new SortedDictionary<DateOnly, (long Tests, long Refuted)>
        {
            [new(2026, 1, 5)] = (100, 1),
            [new(2026, 1, 6)] = (100, 0),
            [new(2026, 1, 8)] = (11, 2),
            [new(2026, 1, 9)] = (2, 2),
        });

        events.Select(one => one.Test).Should().Equal(50, 204, 208, 212, 213);
        events.Zip(events.Skip(1), (one, next) => next.Time - one.Time).First().Should().BeApproximately(2 + (5.0 / 6), 1e-9);
        events.Select(one => one.Test).Should().BeInAscendingOrder().And.OnlyHaveUniqueItems();
    }

    [Fact]
    public void What_lies_between_rare_refuted_positives_is_charted_with_geometric_and_exponential_limits()
    {
        var sketch = new ProgramSketch();
        for (var day = 0; day < 120; day++) sketch.Runs(Outcome.Negative, 99, day: day).Runs(day % 10 == 0 ? Outcome.Positive : Outcome.Negative, 1, day % 10 == 0 ? FollowUp.Refuted : FollowUp.None, day: day);
        var findings = Of(sketch);
        var tests = findings.Single("refuted/tests-between/refuted-positive");

        tests.Points.Select(point => point.Estimate).Should().AllBeEquivalentTo(999.0).And.HaveCount(11);
        tests.Points[0].Upper.Should().Be(GapChart.Probability(Enumerable.Repeat(999L, 11)).Points[0].Upper);
        findings.Single("refuted/days-between/refuted-positive").Points.Select(point => point.Estimate).Should().AllBeEquivalentTo(10.0);
        // Evenly spaced by chance? Never: but no stretch is outside.
        tests.PointsAbove.Should().Be(0);
    }

    [Fact]
    public void Without_a_confirmatory_export_nothing_is_charted_that_could_be_refuted()
    {
        Of(Weeks(20, _ => 3).WithoutConfirmatory()).Charts.Should().OnlyContain(chart => chart.Measure == ChartMeasure.InvalidRuns).And.NotBeEmpty();
    }

    [Fact]
    public void Runs_without_a_lot_are_in_no_comparison_and_few_runs_make_no_chart_of_a_site()
    {
        var findings = Of(Sites(9, (_, _) => 3).Runs(Outcome.Negative, 50, lot: Levels.None, site: "Ash"));

        findings.Charts.Where(chart => chart.PointsAre == PointKind.Lot).SelectMany(chart => chart.Points).Should().NotContain(point => point.Name == Levels.None);
        findings.Charts.Should().NotContain(chart => chart.By == Grouping.Site);
        findings.PlacesWithFewRuns.Should().Be(6);
        findings.Sentences[^1].Text.Should().Be("6 charts of sites are left out for fewer than 10 periods or fewer than 5 events.");
    }

    [Fact]
    public void A_thousand_sites_over_five_years_of_days_make_a_limited_number_of_charts_and_points()
    {
        var sketch = new ProgramSketch { Period = ReportPeriod.Day };
        for (var site = 0; site < 1000; site++)
        {
            for (var month = 0; month < 60; month++)
            {
                sketch.Runs(Outcome.Negative, 40, site: "S" + site, day: month * 30).Runs(Outcome.Invalid, site == 7 ? 9 : 1, site: "S" + site, day: month * 30);
            }
        }

        sketch.Runs(Outcome.Negative, 1, site: "S0", day: 1825);
        var findings = ControlChartAnalysis.Of(sketch.Tally(), new ProgramSettings(), [], []);

        findings.Charts.Where(chart => chart.By == Grouping.Site && chart.Kind == ChartKind.Share).Should().HaveCount(ChartRules.MostPlaces).And.Contain(chart => chart.Level == "S7");
        findings.Charts.Max(chart => chart.PointCount).Should().BeLessThanOrEqualTo(ChartRules.MostPeriods);
        findings.Single("invalid-runs/share/week").PointCount.Should().Be(61);
        findings.PlacesBeyondMost.Should().Be(1000 - ChartRules.MostPlaces);
    }

    [Fact]
    public void Every_figure_of_every_sentence_of_a_chart_stands_under_its_path()
    {
        foreach (var sketch in new[] { Weeks(20, week => week), Sites(20, (site, week) => site == "Dale" ? week : 3), FaultyLot() })
        {
            var findings = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings());
            foreach (var figure in findings.ControlCharts.Charts.SelectMany(chart => chart.Sentence.Figures))
            {
                var value = FigureLookup.Find(findings, figure.Id);
                if (figure.Value.Kind == Model.CellKind.Count) Convert.ToInt64(value, System.Globalization.CultureInfo.InvariantCulture).Should().Be(figure.Value.AsCount, figure.Id);
                else if (figure.Value.Kind == Model.CellKind.Date) value.Should().Be(figure.Value.AsDate, figure.Id);
                else value.Should().Be(figure.Value.AsText, figure.Id);
            }
        }
    }

    private static ProgramSketch FaultyLot()
    {
        var sketch = new ProgramSketch();
        for (var week = 0; week < 20; week++)
        {
            foreach (var site in new[] { "Ash", "Birch" })
            {
                foreach (var lot in new[] { "L1", "L2", "L9" })
                {
                    var refuted = lot == "L9" && site == "Birch" && week is 8 or 9 ? 20 : week % 3 == 0 ? 1 : 0;
                    sketch.Runs(Outcome.Negative, 300 - refuted, site: site, lot: lot, day: week * 7).Runs(Outcome.Positive, refuted, FollowUp.Refuted, site, lot, week * 7);
                }
            }
        }

        return sketch;
    }

    private static ProgramSketch Weeks(int weeks, Func<int, long> unusable, long refuted = 0)
    {
        var sketch = new ProgramSketch();
        for (var week = 0; week < weeks; week++)
        {
            sketch.Runs(Outcome.Negative, 300 - unusable(week) - refuted, day: week * 7).Runs(Outcome.Invalid, unusable(week), day: week * 7)
                .Runs(Outcome.Positive, refuted, FollowUp.Refuted, day: week * 7);
        }

        return sketch;
    }

    private static ProgramSketch Sites(int weeks, Func<string, int, long> unusable)
    {
        var sketch = new ProgramSketch();
        foreach (var site in new[] { "Ash", "Birch", "Dale" })
        {
            for (var week = 0; week < weeks; week++)
            {
                var lot = site == "Dale" || week % 4 == 0 ? "L1" : "L2";
                sketch.Runs(Outcome.Negative, 300 - unusable(site, week), site: site, lot: lot, day: week * 7).Runs(Outcome.Invalid, unusable(site, week), site: site, lot: lot, day: week * 7);
            }
        }

        return sketch;
    }

    private static ControlChartFindings Of(ProgramSketch sketch, ProgramSettings? settings = null) => Evaluator.Evaluate(sketch.Tally(), settings ?? new ProgramSettings()).ControlCharts;
}

internal static class ChartFindingsExtensions
{
    public static ControlChartFinding Single(this ControlChartFindings findings, string id) => findings.Charts.Single(chart => chart.Id == id);
}
