namespace ScreenStats.Counting.Cubes;

/// <summary>Where reporting periods start.</summary>
public static class ReportPeriods
{
    /// <summary>The first day of the period that holds a day. Weeks are ISO weeks and start on Monday.</summary>
    /// <param name="period">Length of the period.</param>
    /// <param name="day">A day in it.</param>
    /// <returns>The first day of the period.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="period"/> is no period.</exception>
    public static DateOnly Start(this ReportPeriod period, DateOnly day) => period switch
    {
        ReportPeriod.Day => day,
        ReportPeriod.Week => Monday(day),
        ReportPeriod.Month => new DateOnly(day.Year, day.Month, 1),
        _ => throw new ArgumentOutOfRangeException(nameof(period), period, "A reporting period is a day, a week or a month."),
    };

    /// <summary>The Monday of the ISO week that holds a day.</summary>
    /// <param name="day">A day.</param>
    /// <returns>Its Monday.</returns>
    public static DateOnly Monday(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));
}
