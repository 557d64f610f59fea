namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>How the exact p-value of a table was found.</summary>
public enum ExactHomogeneityMethod
{
    /// <summary>All tables with the observed margins, added up over a network of partial sums.</summary>
    Network,

    /// <summary>Random tables with the observed margins, from a seed.</summary>
    MonteCarlo,
}
