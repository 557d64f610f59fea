using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.LotRecording;

/// <summary>Runs for which no lot is recorded, and what they hide.</summary>
/// <param name="Program">The whole program.</param>
/// <param name="Sites">By site.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record LotRecordingFindings(
    LotRecordingRow Program, ImmutableArray<LotRecordingRow> Sites, [property: JsonIgnore] Table<LotRecordingRow> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table];
}
