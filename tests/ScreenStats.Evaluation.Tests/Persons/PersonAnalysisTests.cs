using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Persons;

public class PersonAnalysisTests
{
    [Fact]
    public void People_cases_and_person_weeks_are_counted_once_in_the_program_and_at_each_site()
    {
        var findings = Evaluator.Evaluate(Example().Tally(), new ProgramSettings());

        var program = findings.Persons.Program;
        (program.Tested, program.EverPositive).Should().Be((4, 2));
        (program.Cases, program.CasesThroughPositive, program.CasesThroughInconclusive).Should().Be((2, 1, 1));
        // Ann: weeks 1, 2 (two sites). Bob: weeks 1, 2. Cy: week 1. Di: week 3.
        program.PersonWeeks.Should().Be(6);
        program.CasesPerThousandPersonWeeks.Should().BeApproximately(2000 / 6.0, 1e-10);
        findings.Persons.Sites.Select(site => (site.Level, site.Tested, site.PersonWeeks, site.Cases)).Should().Equal(("North", 3, 5, 2), ("South", 2, 2, 0));
    }

    [Fact]
    public void The_rate_carries_wilson_limits_of_cases_among_person_weeks()
    {
        var program = Evaluator.Evaluate(Example().Tally(), new ProgramSettings()).Persons.Program;

        var expected = Statistics.Proportions.ProportionInterval.Wilson(2, 6, 0.95);
        (program.CaseShare.Lower, program.CaseShare.Upper).Should().Be((expected.Lower, expected.Upper));
        (program.CaseShare.ClusterLevel, program.CaseShare.FewSites).Should().Be((null, 2L), "two sites in three weeks cannot widen anything");
        program.CasesPerThousandLower.Should().BeLessThanOrEqualTo(1000 * expected.Lower!.Value);
    }

    [Fact]
    public void Two_cases_of_one_person_in_a_week_do_not_break_the_rate()
    {
        var cells = new TallyCellsBuilder().Add("a", Outcome.Positive, FollowUp.Confirmed).Add("a", Outcome.Positive, FollowUp.Confirmed, day: 2)
            .Add("b", Outcome.Negative).Cells();
        var day = TallyCellsBuilder.Monday;
        var tally = Tally.FromCells(cells with
        {
            Cases = [new CaseCell("North", "L-1", day, Outcome.Positive, 1), new CaseCell("North", "L-1", day.AddDays(2), Outcome.Positive, 1)],
        });

        var program = Evaluator.Evaluate(tally, new ProgramSettings { Policy = new PolicySettings { EpisodeDays = 1 } }).Persons.Program;

        (program.Cases, program.PersonWeeks).Should().Be((2, 2));
    }

    [Fact]
    public void Nobody_tested_leaves_the_rate_undefined_with_its_reason()
    {
        var program = Evaluator.Evaluate(new TallyCellsBuilder().Tally(), new ProgramSettings()).Persons.Program;

        (program.CasesPerThousandPersonWeeks, program.Tested).Should().Be((null, 0));
        program.CasesPerThousandPersonWeeksUndefined.Should().NotBeEmpty();
    }

    private static TallyCellsBuilder Example() => new TallyCellsBuilder()
        .Add("Ann", Outcome.Negative).Add("Ann", Outcome.Negative, day: 2).Add("Ann", Outcome.Negative, day: 7).Add("Ann", Outcome.Negative, site: "South", day: 9)
        .Add("Bob", Outcome.Positive, FollowUp.Confirmed).Add("Bob", Outcome.Positive, FollowUp.Confirmed, day: 8)
        .Add("Cy", Outcome.Inconclusive, FollowUp.Confirmed, day: 6)
        .Add("Di", Outcome.Positive, FollowUp.Refuted, "South", day: 14);
}
