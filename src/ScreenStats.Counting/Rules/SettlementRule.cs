using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>Linkage day by day: what was known about a run's follow-up at the end of each day.</summary>
public static class SettlementRule
{
    /// <summary>The day at whose end a specimen's result is known.</summary>
    /// <remarks>
    /// The local day of the report. Where none is recorded, or one before the collection (which counts as not recorded): the day on which
    /// collection plus the program file's <c>reportLagHours</c> falls, whole days (rounded up) where only the date of the collection is recorded. The
    /// program file's and not the data's own lag, because that one would depend on what was reported later.
    /// </remarks>
    /// <param name="collected">When the specimen was collected.</param>
    /// <param name="reported">When it was reported; null where not recorded.</param>
    /// <param name="reportLagHours">Hours from collection to report where none is recorded, at least 0.</param>
    /// <returns>The day, as <see cref="Moment.DayNumber"/>.</returns>
    public static int KnownDay(Moment collected, Moment? reported, double reportLagHours)
    {
        if (reported is { } report && ReportingLag.Seconds(collected, report) >= 0) return report.DayNumber;
        return collected.DateOnly
            ? collected.DayNumber + (int)Math.Ceiling(reportLagHours / 24)
            : (collected with { Instant = collected.Instant + (long)Math.Floor(reportLagHours * 3600) }).DayNumber;
    }

    /// <summary>Every change of a run's follow-up by the day it became known, in order. It starts as pending on the run's own day.</summary>
    /// <remarks>
    /// The follow-up at the end of a day is that of <see cref="FollowUpRule"/> for the specimens known by then: the first conclusive one
    /// collected within the window, else unresolved, else pending or unverified as of the end of that day. A run is known on its own day.
    /// </remarks>
    /// <param name="run">When the run was collected.</param>
    /// <param name="window">The window of follow-up.</param>
    /// <param name="specimens">Specimens of the same person, in order of time.</param>
    /// <param name="knownDays">The day on which each is known, by <see cref="KnownDay"/>.</param>
    /// <param name="clock">When the time for a specimen is over.</param>
    /// <param name="changes">Takes the changes; not cleared first.</param>
    public static void FindChanges(
        Moment run, FollowUpWindow window, ReadOnlySpan<SpecimenEvent> specimens, ReadOnlySpan<int> knownDays, VerificationClock clock, List<Settlement> changes)
    {
        var closes = window.Closes(run);
        var (state, settled) = (FollowUp.Pending, -1);
        for (var day = run.DayNumber; ;)
        {
            var settling = FollowUpRule.Settling(run, window, specimens, knownDays, day, out var next);
            var status = settling >= 0 ? FollowUpRule.Of(specimens[settling].Result)
                : clock.IsOver(closes, day) ? FollowUp.Unverified : FollowUp.Pending;
            if (status != state || settling != settled) changes.Add(new(day, state, settled, status, settling));
            (state, settled) = (status, settling);

            // Specimens make the next change, or the end of the time for one.
            if (settling < 0 && clock.NextTurn(closes, day) is { } turn && turn < next) next = turn;
            if (next == int.MaxValue) return;
            day = next;
        }
    }

    /// <summary>The first day on which a run is known to fall into the isolation after a confirmatory positive.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="specimens">Specimens of the same person.</param>
    /// <param name="knownDays">The day on which each is known.</param>
    /// <param name="isolationDays">Days of isolation, at least 0.</param>
    /// <returns>The day, as <see cref="Moment.DayNumber"/>, no earlier than the run's; null where it falls into none.</returns>
    public static int? KnownWithinIsolation(Moment run, ReadOnlySpan<SpecimenEvent> specimens, ReadOnlySpan<int> knownDays, int isolationDays)
    {
        int? first = null;
        for (var i = 0; i < specimens.Length; i++)
        {
            if (!specimens[i].IsPositive || !ConductRule.IsWithinIsolation(run, specimens[i].Time, isolationDays)) continue;
            var known = Math.Max(run.DayNumber, knownDays[i]);
            if (first is not { } earlier || known < earlier) first = known;
        }

        return first;
    }
}
