using ScreenStats.Testing;

namespace ScreenStats.Tests;

/// <summary>What a reader of the sample sees first.</summary>
public sealed class SampleAnswersTests
{
    [Fact]
    public void Each_question_of_the_sample_has_one_sentence_of_at_most_45_words()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        foreach (var threshold in new[] { 0, 5 })
        {
            var settings = program.Settings with { Report = program.Settings.Report with { SuppressBelow = threshold } };
            foreach (var answer in program.Read().Tally.Evaluate(settings).Answers.Questions)
            {
                answer.InOneSentence.Split(' ', StringSplitOptions.RemoveEmptyEntries).Count(word => word.Any(char.IsLetterOrDigit)).Should().BeLessThanOrEqualTo(45, answer.InOneSentence);
                answer.InOneSentence.Should().EndWith(".").And.NotContain(". ");
            }
        }
    }

    [Fact]
    public void A_step_about_what_is_no_longer_used_says_when_it_was_last_used()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var steps = program.Read().Tally.Evaluate(program.Settings).Answers.NextSteps;

        steps.Single(step => step.Id == "look-into-lot:D-0719").Text.Should().Contain("last used on 2024-12-20").And.NotContain("stay in use");
        steps.Single(step => step.Id == "remove-expired-lots").Text.Should().Contain("of lot H-2044, none in the last two weeks of the data");
    }

    [Fact]
    public void How_often_and_whether_it_is_worth_it_say_how_they_go_together_at_once()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var answers = program.Read().Tally.Evaluate(program.Settings).Answers.Questions;

        answers.Single(answer => answer.Id == "how-often-to-screen").Sentences[1].Text.Should().Contain("judges \"three-a-week\"").And.Contain("by money \"Monday and Thursday\" gains most");
        var worth = answers.Single(answer => answer.Id == "is-screening-worth-it");
        worth.Sentences[1].Text.Should().StartWith("Judged here is \"three-a-week\"");
        worth.Sentences.Select(sentence => sentence.Text).Should().OnlyHaveUniqueItems();
    }

    [Fact]
    public void What_a_positive_was_worth_lately_and_how_many_infected_were_missed_are_answered()
    {
        var program = ScreeningProgram.Open(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var findings = program.Read().Tally.Evaluate(program.Settings);
        var answers = findings.Answers.Questions;

        answers.Single(answer => answer.Id == "what-a-positive-is-worth").Text.Should().Contain("The share of positives that were confirmed falls").And.Contain("In the last four complete weeks");
        answers.Single(answer => answer.Id == "how-accurate-is-the-screen").Text.Should().Contain("negative runs were of infected people (95 % interval").And.Contain("of 1,156 audited with a conclusive result 1 was missed.");
        findings.Accuracy.InfectedNegatives.Estimate.Should().BeApproximately(58_113.0 / 1_156, 1e-9, "each audited run stands for as many negative ones, and one was missed");
    }
}
