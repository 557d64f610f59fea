using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>Retests: a positive run followed by another run of the same person on the same local day, before any specimen.</summary>
public static class RetestRule
{
    /// <summary>Finds the positive run of one person-day and its retest.</summary>
    /// <remarks>
    /// The person-day's first positive run counts, and of the runs after it the first valid test; where none is valid, the first
    /// one. A run after a specimen that was collected at or after the positive run is no retest: the person was on the way to a confirmatory
    /// test. A specimen with only a date leaves open which came first and rules nothing out. Where any run of the person-day has only
    /// a date, the order of the runs is not known and there is no pair. At most one pair for each person-day.
    /// </remarks>
    /// <param name="day">The runs of one person on one local day, in order of time (of the export where times are equal).</param>
    /// <param name="specimens">Specimens of the same person, in order of time; may hold other days.</param>
    /// <param name="positive">Position of the positive run; -1 where there is no pair.</param>
    /// <param name="retest">Position of the retest; -1 where there is no pair.</param>
    /// <returns>Whether there is a pair.</returns>
    public static bool Find(ReadOnlySpan<RunEvent> day, ReadOnlySpan<SpecimenEvent> specimens, out int positive, out int retest)
    {
        (positive, retest) = (-1, -1);
        var first = -1;
        for (var i = 0; i < day.Length; i++)
        {
            if (day[i].Time.DateOnly) return false;
            if (first < 0 && day[i].Outcome == Outcome.Positive) first = i;
        }

        if (first < 0 || first == day.Length - 1) return false;
        var closed = ClosedFrom(day[first].Time.Instant, specimens);
        var found = -1;
        for (var i = first + 1; i < day.Length && day[i].Time.Instant <= closed; i++)
        {
            if (found < 0) found = i;
            if (!day[i].Outcome.IsValidTest()) continue;
            found = i;
            break;
        }

        if (found < 0) return false;
        (positive, retest) = (first, found);
        return true;
    }

    // The instant of the first timed specimen at or after the positive run: a run up to that second is still before it.
    private static long ClosedFrom(long positive, ReadOnlySpan<SpecimenEvent> specimens)
    {
        foreach (var specimen in specimens)
        {
            if (!specimen.Time.DateOnly && specimen.Time.Instant >= positive) return specimen.Time.Instant;
        }

        return long.MaxValue;
    }
}
