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

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
