using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers;

/// <summary>One reader's question, answered in plain words.</summary>
/// <param name="Id">Stable name: lower case, words joined by hyphens.</param>
/// <param name="Question">The question as the reader would ask it.</param>
/// <param name="Readers">For whom first.</param>
/// <param name="Brief">The answer in one sentence: figure, interval and the condition under which it holds.</param>
/// <param name="Sentences">The whole answer, with figures and intervals.</param>
/// <param name="Conditions">Under what condition it holds.</param>
public sealed record Answer(
    string Id, string Question, ImmutableArray<Reader> Readers,
    [property: JsonIgnore] Sentence Brief, [property: JsonIgnore] ImmutableArray<Sentence> Sentences, [property: JsonIgnore] ImmutableArray<Sentence> Conditions)
{
    /// <summary>The answer in one sentence, as it is read.</summary>
    public string InOneSentence => Brief.Text;

    /// <summary>The whole answer as it is read.</summary>
    public string Text => string.Join(' ', Sentences.Select(sentence => sentence.Text));

    /// <summary>The condition as it is read.</summary>
    public string Condition => string.Join(' ', Conditions.Select(sentence => sentence.Text));
}
