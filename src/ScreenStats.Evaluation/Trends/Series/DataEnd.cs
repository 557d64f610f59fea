using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>Up to which day the data are known to hold every run.</summary>
internal sealed class DataEnd
{
    private readonly DateOnly last;
    private readonly bool[] idle = new bool[7];

    /// <summary>Looks at the last run, what the program file states, and on which weekdays nobody tests.</summary>
    public DataEnd(TrendCube all, ProgramSettings settings)
    {
        last = all.Last;
        if (settings.DataAsOf is { } stated)
        {
            // A moment before the evening leaves part of its day out.
            var until = DateOnly.FromDateTime(stated.Local.AddDays(-1).AddHours(6));
            if (until > last) last = until;
        }

        Span<long> runs = stackalloc long[7];
        long sum = 0;
        foreach (var day in all.Days)
        {
            var some = all[day].Runs;
            runs[(int)day.DayOfWeek] += some;
            sum += some;
        }

        // One week shows no habit.
        for (var day = 0; day < 7; day++) idle[day] = all.Weeks > 2 && runs[day] < TrendRules.IdleWeekday * sum;
    }

    /// <summary>Whether nothing is to be expected any more of the ISO week from a Monday.</summary>
    public bool CoversWeek(DateOnly monday) => Covers(DateOnly.FromDayNumber(Math.Min(monday.DayNumber + 6, DateOnly.MaxValue.DayNumber)));

    /// <summary>Whether nothing is to be expected any more up to and including a day.</summary>
    public bool Covers(DateOnly day)
    {
        for (var next = last; next < day;)
        {
            next = next.AddDays(1);
            if (!idle[(int)next.DayOfWeek]) return false;
        }

        return true;
    }
}
