using System.Collections.Immutable;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Cli.Results;

/// <summary>What is known of one group of clusters.</summary>
internal sealed record ClusterGroup(
    long Clusters,
    long Successes,
    long Trials,
    Figure Estimate,
    Figure Variance,
    Figure StandardError,
    Figure DesignEffect,
    Figure EffectiveTrials,
    Figure IntraclassCorrelation,
    ImmutableArray<IntervalItem> Intervals);
