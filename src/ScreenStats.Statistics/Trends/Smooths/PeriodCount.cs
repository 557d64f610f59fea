namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>Events of the trials of one period. Counts may be real numbers, such as counts divided by a design effect.</summary>
public readonly record struct PeriodCount
{
    /// <summary>Makes the count of a period.</summary>
    /// <param name="period">The number of the period (of a day, a week): periods that follow each other differ by 1.</param>
    /// <param name="events">Events, finite, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, finite, 0 or more; a period without trials is smoothed over.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public PeriodCount(long period, double events, double trials)
    {
        Guard.Counts(events, trials);
        Period = period;
        Events = events;
        Trials = trials;
    }

    /// <summary>The number of the period.</summary>
    public long Period { get; }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Trials.</summary>
    public double Trials { get; }
}
