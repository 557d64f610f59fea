namespace ScreenStats.Evaluation.Clusters;

/// <summary>What trials are clustered in.</summary>
public enum ClusterLevel
{
    /// <summary>The same person, tested again and again.</summary>
    Persons = 0,

    /// <summary>The same site.</summary>
    Sites = 1,

    /// <summary>The same site in the same ISO week.</summary>
    SiteWeeks = 2,
}
