using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Persons;

/// <summary>People tested, people ever positive, and cases.</summary>
public sealed record PersonFindings : IFinding
{
    /// <summary>The whole program.</summary>
    public required PersonRow Program { get; init; }

    /// <summary>By site. A person tested at two sites is counted at each.</summary>
    public required ImmutableArray<PersonRow> Sites { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
