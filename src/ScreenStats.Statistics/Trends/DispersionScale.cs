namespace ScreenStats.Statistics.Trends;

/// <summary>How much more than binomial chance the standard errors of a trend allow for.</summary>
public enum DispersionScale
{
    /// <summary>Pearson's statistic over its degrees of freedom, but at least 1; limits by Student's distribution.</summary>
    PearsonAtLeastOne,

    /// <summary>Pearson's statistic over its degrees of freedom, also where that is below 1; limits by Student's distribution.</summary>
    Pearson,

    /// <summary>Binomial chance alone; limits by the normal distribution.</summary>
    Binomial,
}
