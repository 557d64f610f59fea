using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cautions;

/// <summary>What a reader must know before acting on a figure.</summary>
/// <param name="Items">The cautions: first those that these data or settings call for, then those that every report shows.</param>
public sealed record CautionFindings(ImmutableArray<Caution> Items)
{
    /// <summary>Every caution as a sentence.</summary>
    [JsonIgnore]
    public ImmutableArray<Sentence> Sentences => [.. Items.Select(caution => caution.Sentence)];
}
