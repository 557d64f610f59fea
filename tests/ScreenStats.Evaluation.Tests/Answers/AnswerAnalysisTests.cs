using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Answers;

public class AnswerAnalysisTests
{
    [Fact]
    public void Each_reader_has_a_question_answered_with_the_condition_under_which_it_holds()
    {
        var answers = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full).Answers;

        answers.Questions.Select(answer => answer.Id).Should().Equal("what-a-positive-is-worth", "which-lots-and-sites-stand-out", "how-much-screening-for-each-case", "how-accurate-is-the-screen", "do-they-differ", "is-it-getting-better", "how-often-to-screen", "is-screening-worth-it");
        answers.Questions.SelectMany(answer => answer.Readers).Distinct().Should().BeEquivalentTo(Enum.GetValues<Reader>());
        answers.Questions.Should().OnlyContain(answer => answer.Text.Length > 0 && answer.Condition.Length > 0);
    }

    [Fact]
    public void The_faulty_lot_and_the_clumsy_site_come_into_the_answer_and_into_the_steps()
    {
        var answers = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full).Answers;

        answers.Questions[1].Text.Should().Contain("Lot A]3 stands out").And.Contain("Site West stands out");
        answers.NextSteps.Select(step => step.Rank).Should().Equal(Enumerable.Range(1, answers.NextSteps.Length));
        answers.NextSteps.Select(step => step.Id).Should().ContainInOrder("look-into-lot:A]3", "train-at-site:West", "record-lots");
    }

    [Fact]
    public void Missing_follow_up_goes_before_flags_that_touch_fewer_positives()
    {
        var tally = ExamplePrograms.FaultyLotAndClumsySite().Runs(Outcome.Positive, 200, FollowUp.Unverified).Tally();

        var steps = Evaluator.Evaluate(tally, ExamplePrograms.Full).Answers.NextSteps;

        steps[0].Id.Should().Be("close-follow-up");
    }

    [Theory]
    [InlineData(170, 30, true)] // 30 of 200 infected found
    [InlineData(20, 180, false)]
    public void A_screen_that_misses_more_than_it_finds_is_a_step_and_never_said_to_call_for_nothing(int missed, int found, bool isStep)
    {
        var tally = new ProgramSketch().Runs(Outcome.Positive, found, FollowUp.Confirmed).Runs(Outcome.Negative, missed, FollowUp.Missed).Runs(Outcome.Negative, 4_000, FollowUp.Agreed).Tally();

        var steps = Evaluator.Evaluate(tally, new ProgramSettings()).Answers.NextSteps;

        steps.Should().ContainSingle();
        steps[0].Id.Should().Be(isStep ? "look-into-sensitivity" : "keep-going");
        if (isStep) steps[0].Text.Should().Contain("finds only 15.0 % of the infected").And.Contain("less than it misses").And.Contain("A negative screen excludes little");
        else steps[0].Text.Should().Contain("does not prove that all is well");
    }

    [Theory]
    [InlineData(0.97, true)]
    [InlineData(0.80, false)]
    public void A_sensitivity_below_what_is_stated_is_a_step(double stated, bool isStep)
    {
        var tally = new ProgramSketch().Runs(Outcome.Positive, 140, FollowUp.Confirmed).Runs(Outcome.Negative, 60, FollowUp.Missed).Runs(Outcome.Negative, 4_000, FollowUp.Agreed).Tally();
        var settings = new ProgramSettings { Screens = [new ScreenSettings { Name = "Device", Lots = ["*"], Sensitivity = new StatedAccuracy(stated, null, null, null, null), Specificity = new StatedAccuracy(0.99, null, null, null, null) }] };

        var steps = Evaluator.Evaluate(tally, settings).Answers.NextSteps;

        steps.Any(step => step.Id == "look-into-sensitivity" && step.Text.Contains("where 97.0 % or more are stated", StringComparison.Ordinal)).Should().Be(isStep);
    }

    [Fact]
    public void The_short_answer_on_accuracy_says_where_few_sites_stand_behind_it()
    {
        static string Short(string[] sites)
        {
            var sketch = new ProgramSketch();
            foreach (var site in sites) sketch.Runs(Outcome.Positive, 20, FollowUp.Confirmed, site).Runs(Outcome.Negative, 4, FollowUp.Missed, site).Runs(Outcome.Negative, 196, FollowUp.Agreed, site);
            return Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Answers.Questions[3].InOneSentence;
        }

        Short(["A", "B", "C"]).Should().Contain("for these 3 sites alone");
        Short(["A", "B", "C", "D", "E"]).Should().NotContain("sites alone");
    }

    [Fact]
    public void Without_a_confirmatory_export_the_data_are_said_to_be_unable_to_answer()
    {
        var answers = Evaluator.Evaluate(
            new ProgramSketch().Runs(Outcome.Negative, 500).Runs(Outcome.Positive, 7, FollowUp.Unverified).WithoutConfirmatory().Tally(), new ProgramSettings()).Answers;

        answers.Questions[0].Text.Should().Be("These data cannot say: there is no confirmatory export, so no positive run was confirmed or refuted.");
        answers.Questions[2].Text.Should().StartWith("These data cannot say");
        answers.NextSteps[0].Id.Should().Be("get-confirmatory-results");
    }
}
