namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>Which lots stand out where a share of false findings is held.</summary>
public sealed record EvidenceSelection
{
    internal EvidenceSelection(double falseDiscoveryRate, IReadOnlyList<bool> selected, IReadOnlyList<double> adjusted)
    {
        FalseDiscoveryRate = falseDiscoveryRate;
        Selected = selected;
        AdjustedLevels = adjusted;
    }

    /// <summary>The largest expected share of false findings among the findings that was allowed.</summary>
    public double FalseDiscoveryRate { get; }

    /// <summary>Whether each lot is selected, in the order given.</summary>
    public IReadOnlyList<bool> Selected { get; }

    /// <summary>The smallest rate at which each lot would be selected, at most 1, in the order given.</summary>
    public IReadOnlyList<double> AdjustedLevels { get; }

    /// <summary>How many are selected.</summary>
    public int Count => Selected.Count(one => one);
}
