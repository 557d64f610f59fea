using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Coverage;

/// <summary>People tested among people eligible, where a headcount exists.</summary>
public sealed record CoverageFindings : IFinding
{
    /// <summary>True where the program has a headcount.</summary>
    public required bool HasHeadcount { get; init; }

    /// <summary>The whole program, over the site-weeks of the headcount; null without a headcount.</summary>
    public required CoverageRow? Program { get; init; }

    /// <summary>Why there is no coverage; null where there is.</summary>
    public required string? ProgramUndefined { get; init; }

    /// <summary>By site.</summary>
    public required ImmutableArray<CoverageRow> Sites { get; init; }

    /// <summary>By site and ISO week.</summary>
    public required ImmutableArray<CoverageRow> SiteWeeks { get; init; }

    /// <summary>Pairs of a site and a week with counted runs but without a headcount: in no figure of coverage.</summary>
    public required long SiteWeeksWithoutHeadcount { get; init; }

    /// <summary>Pairs of a site and a week in which more people were tested than the headcount holds.</summary>
    public required long SiteWeeksBeyondHeadcount { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
