namespace ScreenStats.Statistics.Trends;

/// <summary>Events of trials in one period.</summary>
public readonly record struct TimedCount
{
    /// <summary>Makes a count.</summary>
    /// <param name="time">Where the period lies, in any unit, finite: for instance its number.</param>
    /// <param name="events">Events, 0 to <paramref name="trials"/>; a real number, as counts over a design effect are.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A time that is not finite, or counts that cannot be.</exception>
    public TimedCount(double time, double events, double trials)
    {
        Guard.Finite(time);
        Guard.Counts(events, trials);
        Time = time;
        Events = events;
        Trials = trials;
    }

    /// <summary>Where the period lies.</summary>
    public double Time { get; }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Trials.</summary>
    public double Trials { get; }
}
