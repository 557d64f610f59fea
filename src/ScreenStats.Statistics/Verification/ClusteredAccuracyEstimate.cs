namespace ScreenStats.Statistics.Verification;

/// <summary>A figure of a partly verified screen whose limits take the runs of one person, or of one larger cluster such as a site, as belonging together.</summary>
public sealed record ClusteredAccuracyEstimate
{
    internal ClusteredAccuracyEstimate(Estimate estimate, bool groupsDecide, long clusters, double varianceRatio)
    {
        Estimate = estimate;
        GroupsDecide = groupsDecide;
        Clusters = clusters;
        VarianceRatio = varianceRatio;
    }

    /// <summary>The figure with its limits.</summary>
    public Estimate Estimate { get; }

    /// <summary>Whether the limits rest on the larger clusters, since the variance over them is larger than the one over people.</summary>
    public bool GroupsDecide { get; }

    /// <summary>The number of clusters that the limits rest on: of the larger ones, or of people.</summary>
    public long Clusters { get; }

    /// <summary>How many times the variance over people the variance over the clusters is that the limits rest on; 1 where people decide.</summary>
    public double VarianceRatio { get; }
}
