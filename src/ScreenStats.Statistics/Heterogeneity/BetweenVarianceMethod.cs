namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>How the variance between groups, beyond what chance gives, is estimated.</summary>
public enum BetweenVarianceMethod
{
    /// <summary>DerSimonian and Laird's moments with the weights of a common effect.</summary>
    DerSimonianLaird,

    /// <summary>Paule and Mandel's: the variance at which the weighted squares are what chance gives.</summary>
    PauleMandel,

    /// <summary>Restricted maximum likelihood.</summary>
    RestrictedMaximumLikelihood,

    /// <summary>Maximum likelihood; too small with few groups.</summary>
    MaximumLikelihood,

    /// <summary>Hedges and Olkin's moments without weights.</summary>
    HedgesOlkin,
}
