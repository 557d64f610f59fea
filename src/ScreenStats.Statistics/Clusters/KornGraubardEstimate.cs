using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>A proportion of clustered trials with Korn and Graubard's interval.</summary>
public sealed record KornGraubardEstimate
{
    internal KornGraubardEstimate(DesignEffectEstimate designEffect, double effectiveTrials, long? degreesOfFreedom, double confidence, Interval? interval)
    {
        DesignEffect = designEffect;
        EffectiveTrials = effectiveTrials;
        DegreesOfFreedom = degreesOfFreedom;
        Confidence = confidence;
        Interval = interval;
    }

    /// <summary>The design effect with the sums behind it; where it is undefined, its reason says why nothing was widened.</summary>
    public DesignEffectEstimate DesignEffect { get; }

    /// <summary>The effective number of trials, adjusted for the number of clusters and at most the trials.</summary>
    public double EffectiveTrials { get; }

    /// <summary>The number of clusters minus 1; null where no design effect can be estimated, and nothing was adjusted.</summary>
    public long? DegreesOfFreedom { get; }

    /// <summary>The confidence of the interval, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>Events divided by trials; null without trials.</summary>
    public double? Estimate => DesignEffect.Sums.Trials == 0 ? null : (double)DesignEffect.Sums.Events / DesignEffect.Sums.Trials;

    /// <summary>The interval, inside [0, 1] and around the estimate; null without trials.</summary>
    public Interval? Interval { get; }

    /// <summary>The lower end; null without trials.</summary>
    public double? Lower => Interval?.Lower;

    /// <summary>The upper end; null without trials.</summary>
    public double? Upper => Interval?.Upper;
}
