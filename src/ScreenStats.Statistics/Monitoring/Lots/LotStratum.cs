namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>A stratum in which one lot is compared with all others: for instance the valid tests of one site in one week.</summary>
public readonly record struct LotStratum
{
    /// <summary>Makes a stratum.</summary>
    /// <param name="lotEvents">Events of the lot, 0 to <paramref name="lotTrials"/>.</param>
    /// <param name="lotTrials">Trials of the lot, 0 or more.</param>
    /// <param name="events">Events of all lots together, this one's among them.</param>
    /// <param name="trials">Trials of all lots together, this one's among them.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be: a part above its whole, or more events than trials in the lot or in the others.</exception>
    public LotStratum(long lotEvents, long lotTrials, long events, long trials)
    {
        if (lotTrials < 0 || lotTrials > trials) throw new ArgumentOutOfRangeException(nameof(lotTrials), lotTrials, "The trials of the lot must lie between 0 and those of the stratum.");
        if (lotEvents < 0 || lotEvents > lotTrials) throw new ArgumentOutOfRangeException(nameof(lotEvents), lotEvents, "The events of the lot must lie between 0 and its trials.");
        if (events < lotEvents || events - lotEvents > trials - lotTrials)
            throw new ArgumentOutOfRangeException(nameof(events), events, "The events of the stratum must hold the lot's, and those of the others must not exceed their trials.");
        LotEvents = lotEvents;
        LotTrials = lotTrials;
        Events = events;
        Trials = trials;
    }

    /// <summary>Events of the lot.</summary>
    public long LotEvents { get; }

    /// <summary>Trials of the lot.</summary>
    public long LotTrials { get; }

    /// <summary>Events of all lots together.</summary>
    public long Events { get; }

    /// <summary>Trials of all lots together.</summary>
    public long Trials { get; }
}
