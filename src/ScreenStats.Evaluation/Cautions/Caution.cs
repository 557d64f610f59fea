using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cautions;

/// <summary>Something a reader must know before acting on a figure.</summary>
/// <param name="Id">Stable name: lower case, words joined by hyphens.</param>
/// <param name="Sentence">The caution.</param>
/// <param name="FromData">False for those that every report shows, true for those that these data or settings call for.</param>
public sealed record Caution(string Id, [property: JsonIgnore] Sentence Sentence, bool FromData)
{
    /// <summary>The caution as it is read.</summary>
    public string Text => Sentence.Text;
}
