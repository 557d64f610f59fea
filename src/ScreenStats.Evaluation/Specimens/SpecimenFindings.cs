using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Specimens;

/// <summary>Confirmatory specimens by why they were taken.</summary>
/// <param name="All">All specimens.</param>
/// <param name="Reasons">By reason, in the order of the reasons.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record SpecimenFindings(
    SpecimenFinding All, ImmutableArray<SpecimenFinding> Reasons,
    [property: JsonIgnore] Table<SpecimenFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
