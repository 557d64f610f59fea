using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>
/// A proportion with its counts, its Wilson limits, and the limits widened for clusters. The widened limits lead in the report; an
/// undefined figure is null and its reason stands beside it.
/// </summary>
public sealed record ProportionFinding
{
    /// <summary>Fewer events or fewer other trials than this are marked as few.</summary>
    public const long FewBelow = 5;

    /// <summary>Events.</summary>
    public required long Events { get; init; }

    /// <summary>Trials.</summary>
    public required long Trials { get; init; }

    /// <summary>Events divided by trials, in [0, 1]; null without trials.</summary>
    public required double? Estimate { get; init; }

    /// <summary>Why there is no estimate; null where there is one.</summary>
    public required string? EstimateUndefined { get; init; }

    /// <summary>Lower limit as if all trials were independent.</summary>
    public required double? Lower { get; init; }

    /// <summary>Upper limit as if all trials were independent.</summary>
    public required double? Upper { get; init; }

    /// <summary>Method of the limits.</summary>
    public required string Method { get; init; }

    /// <summary>Confidence of all limits, in (0, 1).</summary>
    public required double Confidence { get; init; }

    /// <summary>Lower limit widened for clusters.</summary>
    public required double? WidenedLower { get; init; }

    /// <summary>Upper limit widened for clusters.</summary>
    public required double? WidenedUpper { get; init; }

    /// <summary>The design effect by which the limits are widened, at least 1; 1 where none can be estimated.</summary>
    public required double DesignEffect { get; init; }

    /// <summary>Why no design effect can be estimated, so that 1 is used; null where one could.</summary>
    public required string? DesignEffectUndefined { get; init; }

    /// <summary>The clusters that gave the largest design effect; null where none can be estimated.</summary>
    public required ClusterLevel? ClusterLevel { get; init; }

    /// <summary>How many of those clusters there are; below 30 the limits use Student's quantile. Null where no design effect can be estimated.</summary>
    public required long? Clusters { get; init; }

    /// <summary>Number of sites where it is 2 to 4: too few to show how sites differ, so that is not in the limits; else null.</summary>
    public long? FewSites { get; init; }

    /// <summary>Number of site-weeks where it is 2 to 4: too few to show how they differ, so that is not in the limits; else null.</summary>
    public long? FewSiteWeeks { get; init; }

    /// <summary>Trials divided by the design effect: so many independent trials would tell as much.</summary>
    public double EffectiveTrials => Trials / DesignEffect;

    /// <summary>True where fewer than 5 events or fewer than 5 other trials stand behind the estimate: read it with care.</summary>
    public bool FewCounts => Trials > 0 && Math.Min(Events, Trials - Events) < FewBelow;
}
