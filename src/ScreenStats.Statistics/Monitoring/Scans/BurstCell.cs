namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The trials and events of one lot at one site on one day.</summary>
public readonly record struct BurstCell
{
    /// <summary>Makes a cell.</summary>
    /// <param name="lot">The number of the lot, 0 or more, in the caller's own order.</param>
    /// <param name="site">The number of the site, 0 or more, in the caller's own order.</param>
    /// <param name="day">The number of the day, on any calendar.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number below 0, or counts that cannot be.</exception>
    public BurstCell(int lot, int site, int day, long trials, long events)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lot);
        ArgumentOutOfRangeException.ThrowIfNegative(site);
        if (trials < 0) throw new ArgumentOutOfRangeException(nameof(trials), trials, "The trials of a cell must be 0 or more.");
        if (events < 0 || events > trials) throw new ArgumentOutOfRangeException(nameof(events), events, "The events of a cell must lie between 0 and its trials.");
        (Lot, Site, Day, Trials, Events) = (lot, site, day, trials, events);
    }

    /// <summary>The number of the lot.</summary>
    public int Lot { get; }

    /// <summary>The number of the site.</summary>
    public int Site { get; }

    /// <summary>The number of the day.</summary>
    public int Day { get; }

    /// <summary>Trials.</summary>
    public long Trials { get; }

    /// <summary>Events.</summary>
    public long Events { get; }
}
