namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>What happens around a screen: how long a result takes, from which result on a person isolates, and how misses repeat.</summary>
public sealed record ScreeningRules
{
    /// <summary>The largest correlation that is computed as it stands; a larger one is computed at this.</summary>
    public const double LargestComputedCorrelation = 0.9999;

    /// <summary>Days from taking a screen until its result is acted upon, 0 to a billion.</summary>
    public double DelayDays { get; init; }

    /// <summary>Days from there until the confirmatory result is acted upon, 0 to a billion; counts only where isolation waits for it.</summary>
    public double ConfirmatoryDelayDays { get; init; }

    /// <summary>From which result on a person isolates.</summary>
    public IsolationTrigger IsolateOn { get; init; }

    /// <summary>
    /// How much the misses of one person repeat, in [0, 1): the correlation of two screens of the same person on the normal scale behind them.
    /// 0: independent; near 1: always the same people are missed.
    /// </summary>
    /// <remarks>
    /// A person with effect z, standard normal over people, is positive at an age of chance p with chance
    /// Φ((Φ⁻¹(p) + √ρ z) / √(1 - ρ)); over all people that is p again. Between the days of a course each person's chance is linear.
    /// </remarks>
    public double MissCorrelation { get; init; }

    /// <summary>The chance that a positive screen leads to isolation at all, in [0, 1], for each independently; who is not isolated goes on being screened.</summary>
    public double FollowThrough { get; init; } = 1;

    /// <summary>Days that a person stays away, from the isolation by a screen on, and likewise from symptoms on, 0 to a billion; null where days away are not asked for.</summary>
    public double? IsolationDays { get; init; }

    /// <summary>Days from taking a positive screen to isolation.</summary>
    public double DaysToIsolation => DelayDays + (IsolateOn == IsolationTrigger.Confirmation ? ConfirmatoryDelayDays : 0);

    internal void Check()
    {
        Guard.Days(DelayDays);
        Guard.Days(ConfirmatoryDelayDays);
        if (IsolateOn is not (IsolationTrigger.Screen or IsolationTrigger.Confirmation))
            throw new ArgumentOutOfRangeException(nameof(IsolateOn), IsolateOn, "Not a trigger this library knows.");
        if (!(MissCorrelation is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(MissCorrelation), MissCorrelation, "The correlation of misses must lie from 0 to below 1.");
        Guard.Probability(FollowThrough);
        if (IsolationDays is { } days) Guard.Days(days, nameof(IsolationDays));
    }
}
