using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>Ways of carrying out a run that are accepted and reported.</summary>
public static class ConductRule
{
    /// <summary>True where the lot had expired: the local day of the run is after the last day on which the lot may be used.</summary>
    /// <param name="day">Local day of the run.</param>
    /// <param name="expiry">Last day; null where not recorded, which is never expired.</param>
    /// <returns>Whether it had expired.</returns>
    public static bool IsExpired(DateOnly day, DateOnly? expiry) => day > expiry;

    /// <summary>True where the device was read before or after its window, both ends allowed.</summary>
    /// <param name="minutes">Minutes from collection to reading; null where not recorded, which is never outside.</param>
    /// <param name="from">Earliest minute; null where not stated.</param>
    /// <param name="to">Latest minute; null where not stated.</param>
    /// <returns>Whether it was read outside.</returns>
    public static bool IsReadOutside(int? minutes, int? from, int? to) => minutes < from || minutes > to;

    /// <summary>Runs beyond what a kit holds.</summary>
    /// <param name="runs">Counted runs from one kit: the same site, lot and kit.</param>
    /// <param name="runsPerKit">Runs it holds; null where not stated.</param>
    /// <returns>The number of runs too many; 0 where not stated.</returns>
    public static long BeyondKit(long runs, int? runsPerKit) => runsPerKit is { } held ? Math.Max(0, runs - held) : 0;

    /// <summary>
    /// True where a run falls into the isolation after a confirmatory positive: later than the specimen and at most so many days
    /// of 24 hours after it; where either has only a date, on one of the so many local days that follow the specimen's.
    /// </summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="positive">When the positive specimen was collected.</param>
    /// <param name="isolationDays">Days of isolation, at least 0.</param>
    /// <returns>Whether the person should have been isolating.</returns>
    public static bool IsWithinIsolation(Moment run, Moment positive, int isolationDays)
    {
        if (run.WholeDaysTo(positive))
        {
            var days = run.DayNumber - positive.DayNumber;
            return days > 0 && days <= isolationDays;
        }

        var seconds = run.Instant - positive.Instant;
        return seconds > 0 && seconds <= isolationDays * Moment.SecondsPerDay;
    }

    /// <summary>True where a run falls into the isolation after any of a person's confirmatory positives.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="positives">Times of the person's confirmatory positives, in order.</param>
    /// <param name="isolationDays">Days of isolation, at least 0.</param>
    /// <returns>Whether the person should have been isolating.</returns>
    public static bool IsWithinIsolation(Moment run, ReadOnlySpan<Moment> positives, int isolationDays)
    {
        var reach = (isolationDays + 4L) * Moment.SecondsPerDay;
        var after = Moment.CountUpTo(positives, run.Instant + (4 * Moment.SecondsPerDay));
        for (var i = after - 1; i >= 0 && positives[i].Instant >= run.Instant - reach; i--)
        {
            if (IsWithinIsolation(run, positives[i], isolationDays)) return true;
        }

        return false;
    }

    /// <summary>Minutes that at least lie between two results of one person: no device can be read, and a second one run, sooner.</summary>
    public const int FewestMinutesBetweenResults = 5;

    /// <summary>True where the device was read before its specimen was collected.</summary>
    /// <param name="minutes">Minutes from collection to reading; null where not recorded.</param>
    /// <returns>Whether reading comes first.</returns>
    public static bool IsReadBeforeCollected(int? minutes) => minutes < 0;

    /// <summary>True where two runs of one person follow each other sooner than a result can be had, though the first needed no repeat.</summary>
    /// <remarks>
    /// The limit is <see cref="FewestMinutesBetweenResults"/>, itself allowed. After an inconclusive or invalid run a second one at
    /// once is what is asked for, and times are often those of the entry: never within minutes. Runs with only a date neither.
    /// </remarks>
    /// <param name="first">The first run.</param>
    /// <param name="second">The next run of the same person in order of time.</param>
    /// <returns>Whether they are too close.</returns>
    public static bool IsWithinMinutes(RunEvent first, RunEvent second) =>
        !first.Time.DateOnly && !second.Time.DateOnly && !first.Outcome.IsUnusable()
        && second.Time.Instant - first.Time.Instant is >= 0 and < FewestMinutesBetweenResults * 60;
}
