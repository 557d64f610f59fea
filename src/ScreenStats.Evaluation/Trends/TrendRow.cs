using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Trends;

/// <summary>One period of a series: what was counted, the smooth through it, and the external rate beside it.</summary>
public sealed record TrendRow
{
    /// <summary>What tells the row from the others: measure, basis and first day, joined by vertical bars.</summary>
    public required string Key { get; init; }

    /// <summary>What is followed.</summary>
    public required TrendMeasure Measure { get; init; }

    /// <summary>Which runs it stands on.</summary>
    public required TrendBasis Basis { get; init; }

    /// <summary>Of what part of the program.</summary>
    public required Grouping By { get; init; }

    /// <summary>The part; empty for the whole program.</summary>
    public required string Level { get; init; }

    /// <summary>What a period is: day, week or month; week-for-day, month-for-day or month-for-week where there would be too many.</summary>
    public required string Period { get; init; }

    /// <summary>First day of the period.</summary>
    public required DateOnly PeriodStart { get; init; }

    /// <summary>Last day of the period.</summary>
    public required DateOnly PeriodEnd { get; init; }

    /// <summary>Whether the period is over and, for predictive value, its follow-up is. A period that is not is shown and never fitted.</summary>
    public required bool Complete { get; init; }

    /// <summary>Trials.</summary>
    public required long Trials { get; init; }

    /// <summary>Events.</summary>
    public required long Events { get; init; }

    /// <summary>Positive runs of the period that still wait for a result.</summary>
    public required long Pending { get; init; }

    /// <summary>The share with its limits; the widened ones allow for trials that come in clusters, and lead.</summary>
    public required ProportionFinding Share { get; init; }

    /// <summary>The smooth of a level that wanders from period to period; null where the period is not fitted.</summary>
    public required double? Smooth { get; init; }

    /// <summary>Lower limit of the band of the smooth.</summary>
    public required double? SmoothLower { get; init; }

    /// <summary>Upper limit of the band of the smooth.</summary>
    public required double? SmoothUpper { get; init; }

    /// <summary>Why there is no smooth; null where there is one.</summary>
    public required string? SmoothUndefined { get; init; }

    /// <summary>The smooth of a spline; null where the period is not fitted.</summary>
    public required double? Spline { get; init; }

    /// <summary>Lower limit of the band of the spline.</summary>
    public required double? SplineLower { get; init; }

    /// <summary>Upper limit of the band of the spline.</summary>
    public required double? SplineUpper { get; init; }

    /// <summary>Why there is no spline; null where there is one.</summary>
    public required string? SplineUndefined { get; init; }

    /// <summary>The external rate of the program file over the period; null where it states none.</summary>
    public required double? Community { get; init; }

    /// <summary>Why there is no external rate; null where there is one.</summary>
    public required string? CommunityUndefined { get; init; }

    /// <summary>Whether the series leads: told first and drawn first.</summary>
    [JsonIgnore]
    public required bool Leads { get; init; }
}
