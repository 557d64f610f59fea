namespace ScreenStats.Statistics.Stratified;

/// <summary>Events of trials of one of several groups in one of several strata.</summary>
public readonly record struct StratumGroup
{
    /// <summary>Makes the counts.</summary>
    /// <param name="stratum">The stratum, counted from 0.</param>
    /// <param name="group">The group, counted from 0.</param>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number below 0, or counts that cannot be.</exception>
    public StratumGroup(int stratum, int group, long events, long trials)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stratum);
        ArgumentOutOfRangeException.ThrowIfNegative(group);
        Guard.Counts(events, trials);
        Stratum = stratum;
        Group = group;
        Events = events;
        Trials = trials;
    }

    /// <summary>The stratum, counted from 0.</summary>
    public int Stratum { get; }

    /// <summary>The group, counted from 0.</summary>
    public int Group { get; }

    /// <summary>Events.</summary>
    public long Events { get; }

    /// <summary>Trials.</summary>
    public long Trials { get; }
}
