namespace ScreenStats.Statistics.Trends.Series;

/// <summary>What was counted in one period of a series.</summary>
public readonly record struct CountPoint
{
    /// <summary>Makes a point.</summary>
    /// <param name="time">The time of the period in the unit the growth is wanted in (weeks since the first), finite.</param>
    /// <param name="events">Events, finite, 0 or more, whole or real (counts divided by a design effect).</param>
    /// <param name="size">Trials (or what events are counted in, on the scale of events), finite, 0 or more; a period of size 0 keeps its place and says nothing.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or events where there is no size.</exception>
    public CountPoint(double time, double events, double size)
    {
        Guard.Finite(time);
        if (!(size >= 0) || !double.IsFinite(size)) throw new ArgumentOutOfRangeException(nameof(size), size, "The size must be a finite number, 0 or more.");
        if (!(events >= 0) || !double.IsFinite(events) || (size == 0 && events > 0))
            throw new ArgumentOutOfRangeException(nameof(events), events, "The events must be a finite number, 0 or more, and 0 where nothing was counted.");
        Time = time;
        Events = events;
        Size = size;
    }

    /// <summary>The time of the period.</summary>
    public double Time { get; }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Trials or exposure.</summary>
    public double Size { get; }
}
