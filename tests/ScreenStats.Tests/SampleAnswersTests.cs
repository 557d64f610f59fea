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
}
