using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Runs of control swabs: expected against observed.</summary>
public sealed record ControlFindings : IFinding
{
    /// <summary>Runs of control swabs.</summary>
    public required long Runs { get; init; }

    /// <summary>Negative controls of the whole program.</summary>
    public required ControlRow Negative { get; init; }

    /// <summary>Positive controls of the whole program.</summary>
    public required ControlRow Positive { get; init; }

    /// <summary>By site and by lot.</summary>
    public required ImmutableArray<ControlRow> Parts { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
