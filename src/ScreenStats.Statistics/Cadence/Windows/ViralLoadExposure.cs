using ScreenStats.Statistics.Cadence.Courses.ViralLoads;

namespace ScreenStats.Statistics.Cadence.Windows;

/// <summary>Days' worth of infections that the screens of a program find where infections run by individual viral loads.</summary>
public static class ViralLoadExposure
{
    /// <summary>The mean over simulated people, each with a detectable time of their own.</summary>
    /// <param name="courses">How infections run.</param>
    /// <param name="earlier">How many screens came before, for times at least as long as the longest.</param>
    /// <param name="people">People simulated, 2 or more.</param>
    /// <param name="seed">What the drawing starts from.</param>
    /// <returns>Person-days, as <see cref="Incidences.IncidenceEstimate.Exposure"/>.</returns>
    /// <remarks>
    /// A screen at an age within a person's detectable time, before symptoms isolate them, finds the infection with the sensitivity above the limit, if none of the screens within that time
    /// before it did: the same renewal as in <see cref="WindowCourse.Exposure"/>, without repeated misses but for those of people whose time is short.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or a detectable time longer than the counts reach.</exception>
    public static double Of(ViralLoadCourses courses, EarlierScreens earlier, int people, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(courses);
        ArgumentNullException.ThrowIfNull(earlier);
        if (people < 2) throw new ArgumentOutOfRangeException(nameof(people), people, "The people must number 2 or more.");
        courses.Check();
        var days = (int)Math.Ceiling(courses.LongestDetectable);
        if (days > earlier.LongestDay) throw new ArgumentOutOfRangeException(nameof(courses), days, "A detectable time must not be longer than the counts of earlier screens reach.");

        // By whole days into the detectable time: the chance that a screen there is the first to find it, summed up.
        var missed = new double[earlier.Most + 1];
        for (var n = 0; n < missed.Length; n++) missed[n] = courses.SensitivityAboveLimit * Math.Pow(1 - courses.SensitivityAboveLimit, n);
        var upTo = new double[days + 2];
        for (var day = 0; day <= days; day++) upTo[day + 1] = upTo[day] + earlier.Mean(missed, day);
        var sum = 0.0;
        for (var person = 0; person < people; person++)
        {
            var illness = new Illness(courses, IllnessDraw.Of(courses, seed, person));
            var end = illness.Isolates ? Math.Min(illness.DetectableTo, illness.Symptoms) : illness.DetectableTo;
            var time = Math.Clamp(end - illness.DetectableFrom, 0, days);
            var whole = (int)time;
            sum += upTo[whole] + ((time - whole) * (upTo[whole + 1] - upTo[whole]));
        }

        return earlier.Screens * sum / people;
    }

    /// <summary>The longest time a load can stay at or above the limit.</summary>
    /// <param name="courses">How infections run.</param>
    /// <returns>Days.</returns>
    public static double LongestDays(ViralLoadCourses courses)
    {
        ArgumentNullException.ThrowIfNull(courses);
        return Math.Max(0, courses.LongestDetectable);
    }
}
