using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Cautions;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Cautions;

public class CautionAnalysisTests
{
    [Fact]
    public void Every_report_shows_every_standard_caution_once()
    {
        foreach (var (name, _, _) in ExamplePrograms.All)
        {
            var cautions = ExamplePrograms.Evaluated(name).Cautions.Items;

            cautions.Select(caution => caution.Id).Should().OnlyHaveUniqueItems().And.Contain(StandardCautions.All.Select(caution => caution.Id));
        }
    }

    [Fact]
    public void A_report_that_hides_no_small_counts_says_first_that_it_is_not_for_circulation()
    {
        Ids(new ProgramSketch(), new ProgramSettings())[0].Should().Be("small-counts");
        Ids(new ProgramSketch(), new ProgramSettings { Report = new ReportSettings { SuppressBelow = 5 } }).Should().NotContain("small-counts");
    }

    [Fact]
    public void A_bare_accuracy_is_said_to_be_taken_as_exact_and_one_with_counts_is_not()
    {
        var ids = Ids(new ProgramSketch().Runs(Outcome.Negative, 10), ExamplePrograms.Full);

        ids.Should().Contain("taken-as-exact:Kit two").And.Contain("taken-as-exact:confirmatory-test");
        ids.Should().NotContain("taken-as-exact:Kit [one]").And.NotContain("taken-as-exact:prevalence");
    }

    [Fact]
    public void Missing_follow_up_and_a_missing_time_zone_are_said()
    {
        var sketch = new ProgramSketch()
            .Runs(Outcome.Positive, 7, FollowUp.Confirmed).Runs(Outcome.Positive, 2, FollowUp.Pending).Runs(Outcome.Positive, 1, FollowUp.Unverified);

        Ids(sketch, new ProgramSettings()).Should().Contain(["many-pending", "many-unverified", "no-time-zone", "no-audits"]);
        Ids(new ProgramSketch().Runs(Outcome.Positive, 7, FollowUp.Confirmed).Runs(Outcome.Negative, 9, FollowUp.Agreed), ExamplePrograms.Full)
            .Should().NotContain(["many-pending", "many-unverified", "no-time-zone", "no-audits"]);
    }

    private static List<string> Ids(ProgramSketch sketch, ProgramSettings settings) =>
        [.. Evaluator.Evaluate(sketch.Tally(), settings).Cautions.Items.Select(caution => caution.Id)];
}
