using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>A design effect: how many times the variance of a proportion exceeds that of independent trials.</summary>
public sealed record DesignEffectEstimate
{
    internal DesignEffectEstimate(ClusterSums sums, double? raw, UndefinedReason? reason)
    {
        Sums = sums;
        Raw = raw;
        Reason = reason;
    }

    /// <summary>The sums it was computed from.</summary>
    public ClusterSums Sums { get; }

    /// <summary>The number of clusters.</summary>
    public long Clusters => Sums.Clusters;

    /// <summary>The design effect as estimated, 0 or more and possibly below 1; null where undefined.</summary>
    public double? Raw { get; }

    /// <summary>The design effect to widen by: at least 1, and 1 where it is undefined.</summary>
    public double Value => Math.Max(1, Raw ?? 1);

    /// <summary>The variance of the proportion between clusters, v; null where undefined.</summary>
    public double? Variance
    {
        get
        {
            if (Raw is not { } raw) return null;
            var p = (double)Sums.Events / Sums.Trials;
            return raw * p * (1 - p) / Sums.Trials;
        }
    }

    /// <summary>Why it is undefined (and 1 is used); null where it is defined.</summary>
    public UndefinedReason? Reason { get; }
}
