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

        answers.Questions.Select(answer => answer.Id).Should().Equal("what-a-positive-is-worth", "which-lots-and-sites-stand-out", "how-much-screening-for-each-case", "how-accurate-is-the-screen");
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
