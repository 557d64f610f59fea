using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Yield;

/// <summary>How much screening was done for each case found.</summary>
/// <param name="Runs">Counted runs.</param>
/// <param name="Persons">People tested; null where the data hold no sums over people.</param>
/// <param name="Cases">Cases found, through positive and inconclusive runs.</param>
/// <param name="CasesThroughPositive">Cases found through a positive run.</param>
/// <param name="CasesThroughInconclusive">Cases found through an inconclusive run.</param>
/// <param name="EpisodeDays">Days after a confirmatory positive within which another belongs to the same case.</param>
/// <param name="RunsPerCase">Runs for each case.</param>
/// <param name="PersonsPerCase">People tested for each case.</param>
/// <param name="TestsPerConfirmedRun">Valid tests for each confirmed positive run.</param>
/// <param name="TestsPerRefutedRun">Valid tests for each refuted positive run.</param>
/// <param name="Table">The table.</param>
/// <param name="Sentences">The findings in words.</param>
public sealed record YieldFindings(
    long Runs, long? Persons, long Cases, long CasesThroughPositive, long CasesThroughInconclusive, int EpisodeDays,
    YieldFinding RunsPerCase, YieldFinding PersonsPerCase, YieldFinding TestsPerConfirmedRun, YieldFinding TestsPerRefutedRun,
    [property: JsonIgnore] Table<YieldFinding> Table, [property: JsonIgnore] ImmutableArray<Sentence> Sentences) : IFinding
{
    /// <summary>Runs for each case at each site, in the ordinal order of its name.</summary>
    public ImmutableArray<SiteYield> Sites { get; init; } = [];

    /// <inheritdoc/>
    [JsonIgnore]
    public ImmutableArray<ITable> Tables => [Table, SiteTable];

    /// <summary>The same by site as a table.</summary>
    [JsonIgnore]
    public Table<SiteYield> SiteTable { get; init; } = YieldTables.BySite([]);
}
