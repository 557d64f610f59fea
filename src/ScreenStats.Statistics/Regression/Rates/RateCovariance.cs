namespace ScreenStats.Statistics.Regression.Rates;

/// <summary>What the standard errors of a regression of rates allow for.</summary>
public enum RateCovariance
{
    /// <summary>The model is right: Poisson or binomial chance alone.</summary>
    Model,

    /// <summary>More (or less) than that chance: errors times the root of Pearson's statistic over its degrees of freedom.</summary>
    Quasi,

    /// <summary>Rows of one group depend on each other in any way: the sandwich over groups, times groups / (groups - 1).</summary>
    ClusterRobust,
}
