using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>How runs were carried out: accepted, and reported.</summary>
public sealed record ConductFindings : IFinding
{
    /// <summary>Runs with an expired lot.</summary>
    public required ConductRow ExpiredLot { get; init; }

    /// <summary>Runs read before or after the device's reading window.</summary>
    public required ConductRow ReadOutsideWindow { get; init; }

    /// <summary>Runs beyond the number that their kit holds.</summary>
    public required ConductRow BeyondKitContents { get; init; }

    /// <summary>Runs on people within the isolation period after a confirmatory positive.</summary>
    public required ConductRow WithinIsolation { get; init; }

    /// <summary>The sites and lots where something was found.</summary>
    public required ImmutableArray<ConductRow> Places { get; init; }

    /// <summary>Measures of conduct as shares, by program, site, lot and operator.</summary>
    public required ImmutableArray<ConductRate> Rates { get; init; }

    /// <summary>Ways of taking the specimen against one another.</summary>
    public required ImmutableArray<ConductContrast> Contrasts { get; init; }

    /// <summary>What was found.</summary>
    [JsonIgnore]
    public required Table<ConductRow> ConductTable { get; init; }

    /// <summary>The shares.</summary>
    [JsonIgnore]
    public required Table<ConductRate> RateTable { get; init; }

    /// <summary>The differences.</summary>
    [JsonIgnore]
    public required Table<ConductContrastRow> ContrastTable { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [ConductTable, RateTable, ContrastTable];

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
