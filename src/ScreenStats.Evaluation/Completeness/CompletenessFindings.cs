using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Completeness;

/// <summary>How much of each column is recorded. A blank is not recorded, never "no".</summary>
public sealed record CompletenessFindings : IFinding
{
    /// <summary>The columns of the screening export.</summary>
    public required ImmutableArray<CompletenessRow> Screening { get; init; }

    /// <summary>The columns of the confirmatory export.</summary>
    public required ImmutableArray<CompletenessRow> Confirmatory { get; init; }

    /// <summary>The columns of the export of control swabs.</summary>
    public required ImmutableArray<CompletenessRow> Controls { get; init; }

    /// <summary>The columns of the headcount.</summary>
    public required ImmutableArray<CompletenessRow> Headcount { get; init; }

    /// <summary>The columns of the export of sites.</summary>
    public required ImmutableArray<CompletenessRow> Sites { get; init; }

    /// <summary>Counted runs that are marked as taken because of an outbreak at their site.</summary>
    public required long OutbreakRuns { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
