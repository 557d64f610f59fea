using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Trends;

/// <summary>What a trend's picture shows.</summary>
/// <param name="Dots">Periods with a share, in order of time; at least one.</param>
internal sealed record TrendSeries(ImmutableArray<TrendDot> Dots)
{
    /// <summary>A period, and several: "week", "weeks".</summary>
    public (string One, string Many) Period { get; init; } = ("week", "weeks");

    /// <summary>The smooth line with its band; null for none.</summary>
    public TrendLine? Smooth { get; init; }

    /// <summary>The community's rate; null for none.</summary>
    public TrendCommunity? Community { get; init; }

    /// <summary>Changes, dated and found.</summary>
    public ImmutableArray<TrendChange> Changes { get; init; } = [];

    /// <summary>Stretches with one slope each.</summary>
    public ImmutableArray<TrendSegment> Segments { get; init; } = [];
}
