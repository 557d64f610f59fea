using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ScreenStats.Evaluation.Model;

/// <summary>
/// What every analysis hands over beside its figures: its tables and its sentences. Both are drawn from the figures, so they are
/// left out of findings.json.
/// </summary>
public interface IFinding
{
    /// <summary>The tables, in the order in which they are shown; at least one.</summary>
    [JsonIgnore]
    ImmutableArray<ITable> Tables { get; }

    /// <summary>The sentences, in the order in which they are read; at least one.</summary>
    [JsonIgnore]
    ImmutableArray<Sentence> Sentences { get; }
}
