using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Participation;

/// <summary>How often people were tested. The median is the middle value or the mean of the middle two; percentiles are by the nearest rank.</summary>
public sealed record ParticipationFindings : IFinding
{
    /// <summary>People with at least one counted run.</summary>
    public required long Persons { get; init; }

    /// <summary>Counted runs.</summary>
    public required long Runs { get; init; }

    /// <summary>Median of runs per person; null without people.</summary>
    public required double? MedianRuns { get; init; }

    /// <summary>10th percentile of runs per person; null without people.</summary>
    public required double? TenthPercentileRuns { get; init; }

    /// <summary>90th percentile of runs per person; null without people.</summary>
    public required double? NinetiethPercentileRuns { get; init; }

    /// <summary>Why there is nothing about runs per person; null where there is.</summary>
    public required string? MedianRunsUndefined { get; init; }

    /// <summary>People with one counted run only.</summary>
    public required long OneRunOnly { get; init; }

    /// <summary>Pairs of consecutive runs of one person.</summary>
    public required long Gaps { get; init; }

    /// <summary>Median of days between consecutive runs; null without such pairs.</summary>
    public required double? MedianGapDays { get; init; }

    /// <summary>90th percentile of days between consecutive runs; null without such pairs.</summary>
    public required double? NinetiethPercentileGapDays { get; init; }

    /// <summary>Why there is nothing about days between runs; null where there is.</summary>
    public required string? MedianGapDaysUndefined { get; init; }

    /// <summary>Both distributions.</summary>
    public required ImmutableArray<ParticipationRow> Rows { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<ITable> Tables { get; init; }

    /// <inheritdoc/>
    [JsonIgnore]
    public required ImmutableArray<Sentence> Sentences { get; init; }
}
