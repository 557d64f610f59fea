using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Answers;

/// <summary>Something worth doing, because of what the data show.</summary>
/// <param name="Id">Stable name: lower case, words joined by hyphens; a lot's or site's name may follow a colon.</param>
/// <param name="Rank">1 for the first.</param>
/// <param name="Sentence">What to do, and what in the data says so.</param>
public sealed record NextStep(string Id, int Rank, [property: JsonIgnore] Sentence Sentence)
{
    /// <summary>The step as it is read.</summary>
    public string Text => Sentence.Text;
}
