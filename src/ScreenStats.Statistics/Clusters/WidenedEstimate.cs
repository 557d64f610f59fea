using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>A proportion whose interval is widened because the trials come in clusters.</summary>
public sealed record WidenedEstimate
{
    internal WidenedEstimate(long successes, long trials, double designEffect, long clusters, double confidence, long? degreesOfFreedom, double quantile, Interval? interval)
    {
        Successes = successes;
        Trials = trials;
        DesignEffect = designEffect;
        Clusters = clusters;
        Confidence = confidence;
        DegreesOfFreedom = degreesOfFreedom;
        Quantile = quantile;
        Interval = interval;
    }

    /// <summary>What was counted as a success (an event).</summary>
    public long Successes { get; }

    /// <summary>How many were counted in all.</summary>
    public long Trials { get; }

    /// <summary>The design effect used, at least 1.</summary>
    public double DesignEffect { get; }

    /// <summary>The number of clusters.</summary>
    public long Clusters { get; }

    /// <summary>Trials divided by the design effect.</summary>
    public double EffectiveTrials => Trials / DesignEffect;

    /// <summary>The confidence of the interval, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>Degrees of freedom of Student's quantile; null where the normal one was used.</summary>
    public long? DegreesOfFreedom { get; }

    /// <summary>The critical value used.</summary>
    public double Quantile { get; }

    /// <summary>Successes divided by trials; null without trials.</summary>
    public double? Estimate => Trials == 0 ? null : (double)Successes / Trials;

    /// <summary>The widened interval, inside [0, 1]; null without trials.</summary>
    public Interval? Interval { get; }

    /// <summary>The lower end; null without trials.</summary>
    public double? Lower => Interval?.Lower;

    /// <summary>The upper end; null without trials.</summary>
    public double? Upper => Interval?.Upper;

    /// <summary>Whether there is an estimate.</summary>
    public bool IsDefined => Trials != 0;

    /// <summary>Why there is no estimate; null where there is one.</summary>
    public UndefinedReason? Reason => IsDefined ? null : UndefinedReason.NoTrials;

    /// <summary>The same as a plain estimate.</summary>
    /// <returns>The value with interval, method and confidence, or undefined with the reason.</returns>
    public Estimate ToEstimate() => Interval is { } interval
        ? Statistics.Estimate.Of((double)Successes / Trials, interval, WidenedInterval.MethodName, Confidence)
        : Statistics.Estimate.Undefined(UndefinedReason.NoTrials);
}
