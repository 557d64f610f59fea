using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers;

/// <summary>The readers' questions in plain words, and what to do next.</summary>
/// <param name="Questions">The questions with their answers, the most asked first.</param>
/// <param name="NextSteps">What to do next, the most pressing first.</param>
public sealed record AnswerFindings(ImmutableArray<Answer> Questions, ImmutableArray<NextStep> NextSteps)
{
    /// <summary>Every sentence, in the order in which they are read.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences =>
        [.. Questions.SelectMany(answer => answer.Sentences.Prepend(answer.Brief).Concat(answer.Conditions)), .. NextSteps.Select(step => step.Sentence)];
}
