using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>interval</c> answers; the side and the design effect where they were asked for.</summary>
internal sealed record IntervalResult(
    long Successes,
    long Trials,
    double Confidence,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? OneSided,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? DesignEffect,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? EffectiveTrials,
    Figure Estimate,
    ImmutableArray<IntervalItem> Intervals);
