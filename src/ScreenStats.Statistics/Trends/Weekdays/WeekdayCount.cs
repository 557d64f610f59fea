namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>Events of trials on one weekday of one week.</summary>
public readonly record struct WeekdayCount
{
    /// <summary>Makes a count.</summary>
    /// <param name="week">The week; any number, the same for days that are compared with each other.</param>
    /// <param name="weekday">The day of the week.</param>
    /// <param name="events">Events, 0 to <paramref name="trials"/>; whole, or the week is taken as a term.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such weekday, or counts that cannot be.</exception>
    public WeekdayCount(int week, DayOfWeek weekday, double events, double trials)
    {
        if (!Enum.IsDefined(weekday)) throw new ArgumentOutOfRangeException(nameof(weekday), weekday, "Not a day of the week.");
        Guard.Counts(events, trials);
        Week = week;
        Weekday = weekday;
        Events = events;
        Trials = trials;
    }

    /// <summary>The week.</summary>
    public int Week { get; }

    /// <summary>The day of the week.</summary>
    public DayOfWeek Weekday { get; }

    /// <summary>Events.</summary>
    public double Events { get; }

    /// <summary>Trials.</summary>
    public double Trials { get; }
}
