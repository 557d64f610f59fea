namespace ScreenStats.Statistics.Regression;

/// <summary>What the standard errors of a logistic regression allow for.</summary>
public enum CovarianceKind
{
    /// <summary>The model is right: binomial chance alone.</summary>
    Binomial,

    /// <summary>More (or less) than binomial chance: errors times the root of Pearson's statistic over its degrees of freedom.</summary>
    QuasiBinomial,

    /// <summary>Rows of one group depend on each other in any way: the sandwich over groups, times groups / (groups - 1).</summary>
    ClusterRobust,
}
