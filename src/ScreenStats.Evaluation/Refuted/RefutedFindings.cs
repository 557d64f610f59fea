using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Refuted;

/// <summary>How often a valid test was positive and then refuted.</summary>
/// <param name="Program">The whole program.</param>
/// <param name="Groups">The parts of the program, without the whole.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record RefutedFindings(
    RefutedFinding Program, ImmutableArray<RefutedFinding> Groups, [property: JsonIgnore] Table<RefutedFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
