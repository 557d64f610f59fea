using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Repeats;

/// <summary>Whether inconclusive and invalid runs were repeated on the same day.</summary>
public sealed record RepeatFindings : IFinding
{
    /// <summary>The whole program, both outcomes together.</summary>
    public required RepeatRow Program { get; init; }

    /// <summary>By part and outcome.</summary>
    public required ImmutableArray<RepeatRow> Rows { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
