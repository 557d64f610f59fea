using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Coverage;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Coverage;

public class CoverageAnalysisTests
{
    private static readonly DateOnly Monday = TallyCellsBuilder.Monday;

    [Fact]
    public void A_person_counts_once_in_a_site_week_and_a_week_without_runs_counts_as_nobody()
    {
        var found = Of(
            new HeadcountCell("North", Monday, 4), new HeadcountCell("North", Monday.AddDays(7), 4), new HeadcountCell("South", Monday, 2));

        found.SiteWeeks.Select(week => (week.Key, week.Persons, week.Eligible)).Should().Equal(
            ("North|2026-01-05", 2, 4), ("North|2026-01-12", 0, 4), ("South|2026-01-05", 1, 2));
        found.Sites.Select(site => site.Share).Should().Equal(0.25, 0.5);
        (found.Program!.Persons, found.Program.Eligible, found.Program.Share).Should().Be((3, 10, 0.3));
        (found.SiteWeeksWithoutHeadcount, found.SiteWeeksBeyondHeadcount).Should().Be((1, 0));
    }

    [Fact]
    public void More_people_tested_than_eligible_is_no_share_but_a_question_to_the_headcount()
    {
        var found = Of(new HeadcountCell("North", Monday, 1));

        found.SiteWeeks.Single().Share.Should().BeNull();
        found.SiteWeeks.Single().ShareUndefined.Should().Contain("check the headcount");
        found.SiteWeeksBeyondHeadcount.Should().Be(1);
        found.Sentences.Should().Contain(sentence => sentence.Text.Contains("check the headcount", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_headcount_there_is_no_coverage_and_it_is_said()
    {
        var found = Of();

        (found.HasHeadcount, found.Program, found.ProgramUndefined).Should().Be((false, null, "there is no headcount"));
        found.Sentences.Single().Text.Should().StartWith("Without a headcount");
        found.Tables.Single().RowCount.Should().Be(0);
    }

    private static CoverageFindings Of(params HeadcountCell[] headcount)
    {
        var cells = new TallyCellsBuilder()
            .Add("a", Outcome.Negative).Add("a", Outcome.Negative, day: 3).Add("b", Outcome.Invalid, day: 6)
            .Add("c", Outcome.Negative, site: "South").Add("c", Outcome.Negative, site: "South", day: 7).Cells();
        return Evaluator.Evaluate(Tally.FromCells(cells with { Headcount = [.. headcount] }), new ProgramSettings()).Coverage;
    }
}
