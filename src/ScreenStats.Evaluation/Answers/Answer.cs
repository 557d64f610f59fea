using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers;

/// <summary>One reader's question, answered in plain words.</summary>
/// <param name="Id">Stable name: lower case, words joined by hyphens.</param>
/// <param name="Question">The question as the reader would ask it.</param>
/// <param name="Readers">For whom first.</param>
/// <param name="Sentences">The answer: a sentence or two, with figure and interval.</param>
/// <param name="Conditions">Under what condition it holds.</param>
public sealed record Answer(
    string Id, string Question, ImmutableArray<Reader> Readers,
    [property: JsonIgnore] ImmutableArray<Sentence> Sentences, [property: JsonIgnore] ImmutableArray<Sentence> Conditions)
{
    /// <summary>The answer in a line or two, its figure first; empty where the answer is short itself.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> InShort { get; init; } = [];

    /// <summary>The short answer as it is read.</summary>
    [JsonIgnore]
    public string Brief => InShort.IsEmpty ? Text : string.Join(' ', InShort.Select(sentence => sentence.Text));

    /// <summary>The answer as it is read.</summary>
    public string Text => string.Join(' ', Sentences.Select(sentence => sentence.Text));

    /// <summary>The condition as it is read.</summary>
    public string Condition => string.Join(' ', Conditions.Select(sentence => sentence.Text));
}
