using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>An intraclass correlation with the mean squares it was computed from, or undefined with the reason.</summary>
public sealed record IntraclassCorrelationEstimate
{
    internal IntraclassCorrelationEstimate(
        long clusters, long trials, long events, double? between, double? within, double? size, double? value, UndefinedReason? reason)
    {
        Clusters = clusters;
        Trials = trials;
        Events = events;
        MeanSquareBetween = between;
        MeanSquareWithin = within;
        MeanClusterSize = size;
        Value = value;
        Reason = reason;
    }

    /// <summary>Clusters with at least one trial.</summary>
    public long Clusters { get; }

    /// <summary>Trials of all clusters; 0 where undefined.</summary>
    public long Trials { get; }

    /// <summary>Events of all clusters; 0 where undefined.</summary>
    public long Events { get; }

    /// <summary>The mean square between clusters; null where undefined.</summary>
    public double? MeanSquareBetween { get; }

    /// <summary>The mean square within clusters; null where undefined.</summary>
    public double? MeanSquareWithin { get; }

    /// <summary>The cluster size n0 that the estimator uses: somewhat below the mean where sizes differ; null where undefined.</summary>
    public double? MeanClusterSize { get; }

    /// <summary>The correlation, at most 1, possibly below 0; null where undefined.</summary>
    public double? Value { get; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; }
}
