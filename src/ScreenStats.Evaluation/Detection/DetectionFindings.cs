using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Detection;

/// <summary>What the flag rule in force would see, and what it would miss.</summary>
/// <param name="Threshold">The adjusted p below which a lot is flagged.</param>
/// <param name="Lots">Lots compared.</param>
/// <param name="Rows">By measure, size and fault.</param>
/// <param name="RefutedUndefined">Why there is nothing on refuted positives; null where there is.</param>
/// <param name="InvalidUndefined">Why there is nothing on unusable runs; null where there is.</param>
/// <param name="Table">The rows as a table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record DetectionFindings(
    double Threshold, int Lots, ImmutableArray<DetectionRow> Rows, string? RefutedUndefined, string? InvalidUndefined,
    [property: JsonIgnore] Table<DetectionRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
