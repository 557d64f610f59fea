namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>What was counted at one point of time. Counts may be real numbers, such as counts divided by a design effect.</summary>
public readonly record struct SplineCount
{
    /// <summary>Makes a count.</summary>
    /// <param name="at">The point of time, finite, in any unit.</param>
    /// <param name="events">Events, finite, 0 or more; of trials not more than <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, or the exposure of a count that has none; finite, 0 or more; at 0 the point is smoothed over.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public SplineCount(double at, double events, double trials)
    {
        Guard.Finite(at);
        Guard.Finite(events);
        Guard.Finite(trials);
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        ArgumentOutOfRangeException.ThrowIfNegative(trials);
        if (trials == 0) ArgumentOutOfRangeException.ThrowIfGreaterThan(events, 0);
        At = at;
        Events = events;
        Trials = trials;
    }

    /// <summary>The point of time.</summary>
    public double At { get; }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Trials or exposure.</summary>
    public double Trials { get; }
}
