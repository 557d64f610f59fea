using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Flow;

/// <summary>The way of every row and run, from the exports to what is known of it: what a flow diagram shows.</summary>
/// <param name="Rows">The boxes, each after the one that it comes from. Boxes that come from the same one add up to it.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record FlowFindings(
    ImmutableArray<FlowRow> Rows, [property: JsonIgnore] Table<FlowRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];

    /// <summary>A box by its key; null where the flow has none of that name.</summary>
    /// <param name="key">The key, such as <c>rows/counted/negative/tested</c>.</param>
    /// <returns>The box, or null.</returns>
    public FlowRow? Find(string key) => Rows.FirstOrDefault(row => row.Key == key);
}
