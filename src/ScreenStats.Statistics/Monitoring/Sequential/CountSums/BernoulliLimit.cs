using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>The limit of a Bernoulli cumulative sum for a wanted rate of false alarms, and what it reaches.</summary>
public sealed record BernoulliLimit
{
    internal BernoulliLimit(BernoulliDesign design, FalseAlarmTarget target, double? limit, double? reached, double? before, double? adjusted, double? asked)
    {
        Design = design;
        Target = target;
        Limit = limit;
        Reached = reached;
        ReachedOneStepLower = before;
        ToFindAdjusted = adjusted;
        ToFindAsked = asked;
    }

    /// <summary>The design.</summary>
    public BernoulliDesign Design { get; }

    /// <summary>What was wanted.</summary>
    public FalseAlarmTarget Target { get; }

    /// <summary>The smallest limit on the lattice whose exact average run length at the rate in order is at least the one wanted.</summary>
    public double? Limit { get; }

    /// <summary>That average run length: observations to a false alarm, on average.</summary>
    public double? Reached { get; }

    /// <summary>The average run length with a limit one step lower, below the one wanted; null where the limit is the lowest there is.</summary>
    public double? ReachedOneStepLower { get; }

    /// <summary>The average number of observations to a signal at <see cref="BernoulliDesign.AdjustedRateToFind"/>.</summary>
    public double? ToFindAdjusted { get; }

    /// <summary>The average number of observations to a signal at <see cref="BernoulliDesign.RateToFind"/>.</summary>
    public double? ToFindAsked { get; }

    /// <summary>Why there is no limit; null where there is one.</summary>
    public UndefinedReason? Reason => Limit is null ? UndefinedReason.NoLimitFound : null;
}
