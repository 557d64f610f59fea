using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Delays;

/// <summary>Waiting times of the whole program and of its sites.</summary>
/// <param name="RunToSpecimen">From a followed-up run to the specimen that settled it.</param>
/// <param name="SpecimenToReport">From the collection of a confirmatory specimen to its report.</param>
/// <param name="Groups">The parts of the program, without the whole.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record DelayFindings(
    DelayFinding RunToSpecimen, DelayFinding SpecimenToReport, ImmutableArray<DelayFinding> Groups,
    [property: JsonIgnore] Table<DelayFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
