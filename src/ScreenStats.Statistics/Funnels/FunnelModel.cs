namespace ScreenStats.Statistics.Funnels;

/// <summary>What the limits of a funnel allow for.</summary>
public enum FunnelModel
{
    /// <summary>Chance alone: exact binomial limits, interpolated.</summary>
    Exact,

    /// <summary>More than chance, in proportion to it: standard errors times the root of the overdispersion.</summary>
    Multiplicative,

    /// <summary>More than chance, the same for groups of every size: a variance between groups is added.</summary>
    Additive,
}
