using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>Repeats: a run by the same person on the same local day after an inconclusive or invalid one.</summary>
public static class RepeatRule
{
    /// <summary>Which runs of one person-day call for a repeat, and which of these were repeated.</summary>
    /// <remarks>
    /// Every inconclusive or invalid run is one repeat due. With times of day it is done where a later run of that person-day
    /// follows it. Where any run of the person-day has only a date, the order is not known: a person-day with an unusable and a usable run
    /// counts as one repeat done, booked on its first unusable run; a person-day of unusable runs only counts none.
    /// </remarks>
    /// <param name="day">The runs of one person on one local day, in order of time (of the export where times are equal).</param>
    /// <param name="done">Set to true for each run that was repeated, else to false; as long as <paramref name="day"/>.</param>
    /// <returns>Repeats due; at least the number done.</returns>
    public static int DueAndDone(ReadOnlySpan<RunEvent> day, Span<bool> done)
    {
        var (due, first, timed) = (0, -1, true);
        for (var i = 0; i < day.Length; i++)
        {
            done[i] = false;
            timed &= !day[i].Time.DateOnly;
            if (!day[i].Outcome.IsUnusable()) continue;
            due++;
            if (first < 0) first = i;
        }

        if (timed)
        {
            for (var i = 0; i < day.Length - 1; i++) done[i] = day[i].Outcome.IsUnusable();
        }
        else if (due > 0 && due < day.Length)
        {
            done[first] = true;
        }

        return due;
    }
}
