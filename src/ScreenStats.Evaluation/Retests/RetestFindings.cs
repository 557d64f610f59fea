using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Retests;

/// <summary>Whether a second run on the same day agreed with a positive one.</summary>
/// <param name="Program">The whole program.</param>
/// <param name="Rows">By device and site of the positive run, without the whole.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record RetestFindings(
    RetestRow Program, ImmutableArray<RetestRow> Rows, [property: JsonIgnore] Table<RetestRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
