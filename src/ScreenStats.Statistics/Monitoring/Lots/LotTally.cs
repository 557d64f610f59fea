namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>The events and trials of one lot.</summary>
public readonly record struct LotTally
{
    /// <summary>Makes a tally.</summary>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public LotTally(long events, long trials)
    {
        if (trials < 0) throw new ArgumentOutOfRangeException(nameof(trials), trials, "The trials of a lot must be 0 or more.");
        if (events < 0 || events > trials) throw new ArgumentOutOfRangeException(nameof(events), events, "The events of a lot must lie between 0 and its trials.");
        Events = events;
        Trials = trials;
    }

    /// <summary>Events of the lot.</summary>
    public long Events { get; }

    /// <summary>Trials of the lot.</summary>
    public long Trials { get; }
}
