namespace ScreenStats.Statistics.Trends.Series;

/// <summary>What the limits of a trend allow for.</summary>
public enum TrendLimits
{
    /// <summary>The model is right: binomial or Poisson chance alone.</summary>
    Plain,

    /// <summary>Periods scatter more (or less) than that, independently of each other: errors times the root of Pearson's statistic over its degrees of freedom.</summary>
    Quasi,

    /// <summary>Periods scatter in any way and lean on their neighbours: Newey and West's sandwich. Too narrow in fewer than some fifty periods.</summary>
    Robust,

    /// <summary>The model is right, and the likelihood itself says which growths are compatible: better than the others where events are few. For a growth only.</summary>
    ProfileLikelihood,
}
