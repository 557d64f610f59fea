namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>What was counted at one point of a chart: a day, a week, a lot.</summary>
public readonly record struct Subgroup
{
    /// <summary>Makes a subgroup.</summary>
    /// <param name="events">How many of the trials were events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">How many trials there were, 0 or more. With 0 the point has no rate and is passed over.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public Subgroup(long events, long trials)
    {
        if (trials < 0) throw new ArgumentOutOfRangeException(nameof(trials), trials, "The number of trials must be 0 or more.");
        if (events < 0 || events > trials)
            throw new ArgumentOutOfRangeException(nameof(events), events, "The number of events must lie between 0 and the number of trials.");
        Events = events;
        Trials = trials;
    }

    /// <summary>How many of the trials were events.</summary>
    public long Events { get; }

    /// <summary>How many trials there were.</summary>
    public long Trials { get; }
}
