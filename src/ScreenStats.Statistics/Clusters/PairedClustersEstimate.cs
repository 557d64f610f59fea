namespace ScreenStats.Statistics.Clusters;

/// <summary>A difference between two parts in which the same clusters stand, or undefined with the reason.</summary>
public sealed record PairedClustersEstimate
{
    private PairedClustersEstimate(double? difference, double? error, Interval? limits, int clusters, double confidence, UndefinedReason? reason)
    {
        Difference = difference;
        StandardError = error;
        Limits = limits;
        Clusters = clusters;
        Confidence = confidence;
        Reason = reason;
    }

    /// <summary>The proportion of the second part less that of the first, in [-1, 1]; null where undefined.</summary>
    public double? Difference { get; }

    /// <summary>Its standard error, 0 or more; null where undefined.</summary>
    public double? StandardError { get; }

    /// <summary>Its limits, within [-1, 1]; null where undefined.</summary>
    public Interval? Limits { get; }

    /// <summary>Clusters with trials in either part.</summary>
    public int Clusters { get; }

    /// <summary>Confidence in (0, 1), two-sided.</summary>
    public double Confidence { get; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; }

    internal static PairedClustersEstimate Of(double difference, double error, Interval limits, int clusters, double confidence) => new(difference, error, limits, clusters, confidence, null);

    internal static PairedClustersEstimate Undefined(int clusters, double confidence, UndefinedReason reason) => new(null, null, null, clusters, confidence, reason);
}
