using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>Week and reporting period of every day of the data, as indices from 0.</summary>
internal sealed class Calendar
{
    private readonly int firstDay;
    private readonly int[] weekOfDay;
    private readonly int[] periodOfDay;

    public Calendar(int firstDay, int lastDay, ReportPeriod period)
    {
        this.firstDay = firstDay;
        (weekOfDay, WeekStarts) = Index(firstDay, lastDay, ReportPeriod.Week);
        (periodOfDay, PeriodStarts) = period == ReportPeriod.Week ? (weekOfDay, WeekStarts) : Index(firstDay, lastDay, period);
        PeriodIsWeek = period == ReportPeriod.Week;
    }

    /// <summary>First days of the weeks.</summary>
    public DateOnly[] WeekStarts { get; }

    /// <summary>First days of the periods.</summary>
    public DateOnly[] PeriodStarts { get; }

    /// <summary>True where a period is a week, so that one of the two sums is enough.</summary>
    public bool PeriodIsWeek { get; }

    public int Week(int dayNumber) => weekOfDay[dayNumber - firstDay];

    public int Period(int dayNumber) => periodOfDay[dayNumber - firstDay];

    private static (int[] OfDay, DateOnly[] Starts) Index(int firstDay, int lastDay, ReportPeriod period)
    {
        var ofDay = new int[Math.Max(0, lastDay - firstDay + 1)];
        var starts = new List<DateOnly>();
        for (var day = 0; day < ofDay.Length; day++)
        {
            var start = period.Start(Moment.DayOf(firstDay + day));
            if (starts.Count == 0 || starts[^1] != start) starts.Add(start);
            ofDay[day] = starts.Count - 1;
        }

        return (ofDay, [.. starts]);
    }
}
