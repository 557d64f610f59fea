using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Expected;

/// <summary>What is stated of the devices against what was seen of them.</summary>
/// <param name="Prevalence">The external prevalence; null where none is stated.</param>
/// <param name="PrevalenceLower">Its lower limit.</param>
/// <param name="PrevalenceUpper">Its upper limit.</param>
/// <param name="PrevalenceSource">Where it comes from; empty where none is stated.</param>
/// <param name="Devices">One finding per device of the program file, in its order.</param>
/// <param name="Table">The comparison as a table.</param>
/// <param name="CurveTable">The curves as a table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record ExpectedFindings(
    double? Prevalence, double? PrevalenceLower, double? PrevalenceUpper, string PrevalenceSource,
    ImmutableArray<DeviceFinding> Devices, [property: JsonIgnore] Table<DeviceFinding> Table, [property: JsonIgnore] Table<CurveRow> CurveTable, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table, CurveTable];
}
