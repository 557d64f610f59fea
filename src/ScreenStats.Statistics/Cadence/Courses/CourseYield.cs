using ScreenStats.Statistics.Cadence.Courses.Quadrature;

namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>What a schedule of screens finds of an infection with a known course, and how much of its infectiousness it takes away.</summary>
/// <remarks>
/// <para>p(x): chance of a screen at age x, v(x): infectiousness, d: days from screen to isolation, Q(x): chance that symptoms have not isolated the
/// person. The density f(x) of the age of the screen that finds the infection comes from the place of the infection within the schedule and the
/// misses before, averaged over people's effects. Taken away by screens beyond symptoms: the integral of f(x) times that of v Q from x + d on; by
/// screens alone without Q; found: the integral of f Q; symptoms alone: 1 minus the integral of v Q over that of v. Onset and screens are independent,
/// given the age. Days away, with D days for each isolation and onset at o: D for whoever is isolated, and for those whom symptoms isolate the days before as well, min(o - x - d, D),
    /// by screens that isolate before; each day is counted once. Observed gaps are a renewal process: the infection falls into a gap with chance in proportion to its length, later gaps are drawn
/// independently; a person who keeps long or short gaps is not followed.</para>
/// <para>Accuracy: without symptoms and repeated misses 1e-12 of what is computed (boxes and lines are integrated exactly up to five screens on sloping
/// stretches, and no worse beyond); with symptoms about 1e-8; with repeated misses about 3e-7, most of it from the sum over people's effects.</para>
/// <para>Source: derived; the closed forms of windows are the case of a box, as in inspection theory (Barlow RE, Proschan F, Mathematical
/// Theory of Reliability, 1965, from memory). Misses alike in all people and one course for everybody find more than where both differ.</para>
/// </remarks>
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
        var sums = new YieldSums(course, rules.DaysToIsolation, rules.IsolationDays);
        if (course.DetectableTo > 0 && schedule.DuePerDay > 0 && schedule.Participation > 0 && schedule.NeverTakePart < 1)
            Screen(schedule, course.DetectableTo, new YieldQuadrature(course, schedule, rules, sums));
        return sums.Outcome();
    }

    /// <summary>The chance that a person is isolated, by a screen or by symptoms, by an age of the infection.</summary>
    /// <param name="course">The course of the infection, the same for everybody.</param>
    /// <param name="schedule">When screens fall due, and who takes them.</param>
    /// <param name="rules">Delays, what isolates, and how misses repeat.</param>
    /// <param name="ageDays">Days since infection, 0 or more.</param>
    /// <returns>The chance, in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its domain.</exception>
    public static double IsolatedByAge(InfectionCourse course, ScreeningSchedule schedule, ScreeningRules rules, double ageDays)
    {
        ArgumentNullException.ThrowIfNull(course);
        Guard.Days(ageDays);

        // What is passed on from that age on only can be isolated before any of it exactly by those isolated by then.
        return Of(course.InfectiousFromOnly(ageDays), schedule, rules).CaughtBeforeInfectious.Value ?? 0;
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
