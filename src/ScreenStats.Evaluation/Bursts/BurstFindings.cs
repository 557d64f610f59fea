using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Bursts;

/// <summary>The strongest bursts over lots, sites and days.</summary>
/// <param name="Rows">One for each kind of event.</param>
/// <param name="Table">The rows as a table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record BurstFindings(
    ImmutableArray<BurstRow> Rows, [property: JsonIgnore] Table<BurstRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
