using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests.Pages;

/// <summary>The pictures of the questions' main pages: what a positive is worth, how accurate the screen was, how much screening a case took.</summary>
public class QuestionPicturesTests
{
    private static readonly string[] Ids = ["predictive-value-by-lot", "predictive-value-by-site", "accuracy-sensitivity", "accuracy-specificity", "yield-by-site"];

    [Fact]
    public void Each_question_has_its_picture_with_a_finding_in_words()
    {
        var charts = Charts(Programs.FaultyLot);

        charts.Select(chart => chart.Id).Should().BeEquivalentTo(Ids);
        charts.Single(chart => chart.Id == "predictive-value-by-lot").Caption.Text.Should().StartWith("A]3 is lowest: ").And.Contain("its limits reach the dashed line, yet it is flagged").And.NotContain("no difference to act on");
        charts.Single(chart => chart.Id == "yield-by-site").Caption.Text.Should().StartWith("A case took ");
        charts.Single(chart => chart.Id == "accuracy-sensitivity").Caption.Text.Should().StartWith("Sensitivity was ");
        foreach (var chart in charts) chart.Description.Should().NotBeEmpty();
    }

    [Fact]
    public void With_one_lot_and_one_site_or_no_case_there_is_nothing_to_compare()
    {
        Charts(Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Positive, 9, FollowUp.Confirmed).Tally(), new ProgramSettings())).Should().BeEmpty();
        Charts(Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Negative, 500, site: "South").Tally(), new ProgramSettings())).Should().BeEmpty();
    }

    [Fact]
    public void Without_an_audit_the_picture_shows_bounds_only_and_says_so()
    {
        var findings = Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Positive, 9, FollowUp.Confirmed).Tally(), ExamplePrograms.Full);

        var chart = Charts(findings).Single(one => one.Id == "accuracy-sensitivity");
        chart.Caption.Text.Should().StartWith("Without audits of negative runs nothing but bounds is known of the sensitivity here: ");
        chart.Marks.OfType<IntervalMark>().Should().HaveCount(findings.Expected.Devices.Length, "those are stated");
    }

    [Fact]
    public void Of_many_sites_no_picture_shows_more_than_there_is_room_for()
    {
        foreach (var chart in Charts(Programs.Published)) chart.Vertical.Ticks.Length.Should().BeInRange(2, LevelChart.Most, chart.Id);
        Charts(Programs.Published).Should().NotBeEmpty();
    }

    [Fact]
    public void A_site_takes_its_runs_for_each_of_its_cases_with_limits_turned_over()
    {
        var sketch = new ProgramSketch().Runs(Outcome.Negative, 995).Runs(Outcome.Positive, 5, FollowUp.Confirmed).Runs(Outcome.Negative, 500, site: "South");
        var sites = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Yield.Sites;

        sites.Select(site => (site.Site, site.RunsPerCase.Done, site.RunsPerCase.Found, site.RunsPerCase.Estimate)).Should().Equal(("North", 1000L, 5L, 200.0), ("South", 500L, 0L, (double?)null));
        // 1 / Wilson's limits of 5 / 1,000 and of 0 / 500, computed apart in double precision by the closed formula (E. B. Wilson, 1927, Journal of the American Statistical Association 22:209).
        sites[0].RunsPerCase.WidenedLower.Should().BeApproximately(85.8298712812179, 1e-9);
        sites[0].RunsPerCase.WidenedUpper.Should().BeApproximately(467.8284815465472, 1e-9);
        sites[1].RunsPerCase.WidenedLower.Should().BeApproximately(131.15888581350285, 1e-9);
        sites[1].RunsPerCase.WidenedUpper.Should().BeNull();
        foreach (var (name, findings) in Programs.All) findings.Yield.Sites.Sum(site => site.RunsPerCase.Found).Should().Be(findings.Yield.Cases, name);
    }

    [Fact]
    public void Where_small_counts_are_hidden_points_are_left_out_one_by_one_and_other_pictures_whole()
    {
        var sketch = new ProgramSketch();
        foreach (var (lot, confirmed, refuted) in new[] { ("A", 40, 30), ("B", 50, 20), ("C", 2, 30), ("D", 30, 30), ("E", 25, 45) })
            sketch.Runs(Outcome.Negative, 900, lot: lot).Runs(Outcome.Positive, confirmed, FollowUp.Confirmed, lot: lot).Runs(Outcome.Positive, refuted, FollowUp.Refuted, lot: lot).Runs(Outcome.Positive, 9, FollowUp.Unverified, lot: lot);
        var all = Evaluator.Evaluate(sketch.Tally(), ExamplePrograms.Full);
        var hiding = DisclosureControl.Apply(Evaluator.Evaluate(sketch.Tally(), ExamplePrograms.Full with { Report = new ReportSettings { SuppressBelow = 5 } }));

        Charts(all).Single(chart => chart.Id == "predictive-value-by-lot").Vertical.Ticks.Should().HaveCount(5);
        var charts = Veiled.Of(AllPages.Of(hiding), hiding.Disclosure).SelectMany(group => group.Pages).SelectMany(page => page.Charts).Where(chart => Ids.Contains(chart.Id)).ToArray();
        var chart = charts.Should().ContainSingle("only these points stand in a table that may be seen").Subject;
        var rows = Encoding.UTF8.GetString(Report.Files(hiding, new ReportInputs())["tables/predictive-values.csv"]).Split('\n').Select(line => line.Split(',')).ToArray();
        int Column(string name) => Array.IndexOf(rows[0], name);
        var seen = rows.Where(row => row[0] == "lot" && row[Column("basis")] == "observed" && row[Column("estimate")] != "hidden").ToArray();
        chart.Vertical.Ticks.Select(tick => tick.Label).Should().BeEquivalentTo(seen.Select(row => row[Column("level")])).And.NotContain("C").And.HaveCountGreaterThan(1);
        chart.Marks.OfType<LineMark>().Count(line => line.Points[0].Y == line.Points[1].Y).Should().Be(seen.Count(row => row[Column("bound_lower")] != "hidden"));
        chart.Caption.Text.Should().NotContain("lowest", "which is lowest bounds what is hidden");
    }

    private static Chart[] Charts(Findings findings) => [.. AllPages.Of(findings).SelectMany(group => group.Pages).SelectMany(page => page.Charts).Where(chart => Ids.Contains(chart.Id))];
}
