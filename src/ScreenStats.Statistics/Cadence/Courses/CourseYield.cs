using ScreenStats.Statistics.Cadence.Courses.Quadrature;

namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>What a schedule of screens finds of an infection with a known course, and how much of its infectiousness it takes away.</summary>
public static class CourseYield
{
    /// <summary>All figures of one schedule.</summary>
    /// <param name="course">The course of the infection, the same for everybody.</param>
    /// <param name="schedule">When screens fall due, and who takes them.</param>
    /// <param name="rules">Delays, what isolates, and how misses repeat.</param>
    /// <returns>The outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure of the schedule or of the rules is outside its domain.</exception>
    public static CourseOutcome Of(InfectionCourse course, ScreeningSchedule schedule, ScreeningRules rules)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(schedule);
        ArgumentNullException.ThrowIfNull(rules);
        schedule.Check();
        rules.Check();
        var sums = new YieldSums(course, rules.DaysToIsolation);
        if (course.DetectableTo > 0 && schedule.DuePerDay > 0 && schedule.Participation > 0 && schedule.NeverTakePart < 1)
            Screen(schedule, course.DetectableTo, new YieldQuadrature(course, schedule, rules, sums));
        return sums.Outcome();
    }

    private static void Screen(ScreeningSchedule schedule, double last, YieldQuadrature quadrature)
    {
        var gaps = schedule.Gaps;
        if (!gaps.IsEmpty)
        {
            var (number, days) = (gaps.Sum(gap => (double)gap.Count), gaps.Sum(gap => (double)gap.Count * gap.Days));
            var first = new double[(int)Math.Ceiling(last)];
            var (longer, next) = (number, 0);
            for (var day = 0; day < first.Length; day++)
            {
                while (next < gaps.Length && gaps[next].Days <= day) longer -= gaps[next++].Count;
                first[day] = longer / days;
            }

            quadrature.Renewal(first, [.. gaps.Select(gap => gap.Days)], [.. gaps.Select(gap => gap.Count / number)]);
            return;
        }

        var (at, period) = (schedule.At, schedule.PeriodDays);
        for (var screen = 0; screen < at.Length; screen++)
        {
            var gap = at[screen] - (screen > 0 ? at[screen - 1] : at[^1] - period);
            var later = new List<double>();
            for (var k = screen; ; k++)
            {
                var days = at[k % at.Length] - at[screen] + (period * (k / at.Length));
                if (days >= last) break;
                later.Add(days);
            }

            quadrature.Chain(gap, 1 / period, [.. later]);
        }
    }
}
