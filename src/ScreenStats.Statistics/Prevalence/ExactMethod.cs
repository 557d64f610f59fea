namespace ScreenStats.Statistics.Prevalence;

/// <summary>The exact interval of an apparent prevalence that is mapped through the correction.</summary>
public enum ExactMethod
{
    /// <summary>Clopper and Pearson's: each tail at most half of what is left.</summary>
    ClopperPearson,

    /// <summary>Blaker's: never wider than Clopper and Pearson's, both tails together at most what is left.</summary>
    Blaker,
}
