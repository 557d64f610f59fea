using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Kits;

/// <summary>The screening devices of one program, side by side.</summary>
/// <param name="Devices">Devices with a counted run, in the order of the program file.</param>
/// <param name="FlaggedLots">Lots of these devices that are flagged for refuted positives or unusable runs, in order.</param>
/// <param name="RunsWithoutDevice">Counted runs whose lot no device claims.</param>
/// <param name="SiteWeeks">Site-weeks with a counted run of any of these devices.</param>
/// <param name="SharedSiteWeeks">Site-weeks with counted runs of at least two of them.</param>
/// <param name="Contrasts">Every two devices by every measure.</param>
/// <param name="Table">Each device's proportions.</param>
/// <param name="ContrastTable">The differences.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record KitFindings(
    ImmutableArray<KitFinding> Devices, ImmutableArray<string> FlaggedLots, long RunsWithoutDevice, long SiteWeeks, long SharedSiteWeeks, ImmutableArray<KitContrast> Contrasts,
    [property: JsonIgnore] Table<KitMeasureRow> Table, [property: JsonIgnore] Table<KitContrastRow> ContrastTable,
    [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <summary>Number of devices with a counted run.</summary>
    public int DeviceCount => Devices.Length;

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table, ContrastTable];
}
