namespace ScreenStats.Statistics.Trends.Series;

/// <summary>What grows by the same factor in each unit of time.</summary>
public enum TrendScale
{
    /// <summary>The odds of an event: binomial, logit.</summary>
    Odds,

    /// <summary>The share of trials that are events: binomial, logarithm.</summary>
    Share,

    /// <summary>The events per exposure: Poisson, logarithm, with the logarithm of the size as offset.</summary>
    Events,
}
