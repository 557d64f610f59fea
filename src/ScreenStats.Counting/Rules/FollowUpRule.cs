using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Rules;

/// <summary>Linkage, run by run: which specimen settles a run, and what became of it.</summary>
public static class FollowUpRule
{
    /// <summary>True where the policy calls for a confirmatory test after this outcome.</summary>
    /// <param name="outcome">Outcome of the run.</param>
    /// <param name="policy">The policy.</param>
    /// <returns>Whether follow-up is due. Never for negative and invalid runs.</returns>
    public static bool IsDue(Outcome outcome, PolicySettings policy) =>
        outcome is Outcome.Positive or Outcome.Inconclusive && policy.FollowUp.Contains(outcome);

    /// <summary>
    /// The specimen that settles a run: the first conclusive one in the window; of several at the same time a positive one.
    /// </summary>
    /// <remarks>
    /// "At the same time" is the same second; where either specimen has only a date, the same local day: their order is not
    /// known then, and the positive one counts.
    /// </remarks>
    /// <param name="run">When the run was collected.</param>
    /// <param name="window">The window.</param>
    /// <param name="specimens">Specimens of the same person, in order of time.</param>
    /// <returns>
    /// Position of the settling specimen; where none is conclusive, of the first indeterminate or rejected one; -1 where the window
    /// is empty.
    /// </returns>
    public static int Settling(Moment run, FollowUpWindow window, ReadOnlySpan<SpecimenEvent> specimens)
    {
        var settling = -1;
        for (var i = FirstNear(run, window, specimens); i < specimens.Length && IsNear(run, window, specimens[i].Time); i++)
        {
            if (window.Holds(run, specimens[i].Time)) settling = Prefer(settling, i, specimens);
        }

        return settling;
    }

    /// <summary>The same among the specimens that are known at the end of a day.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="window">The window.</param>
    /// <param name="specimens">Specimens of the same person, in order of time.</param>
    /// <param name="knownDays">The day on which each is known, by <see cref="SettlementRule.KnownDay"/>.</param>
    /// <param name="day">The day.</param>
    /// <param name="next">The next day on which a specimen in the window becomes known; the largest number where there is none.</param>
    /// <returns>Position of the settling specimen, as in <see cref="Settling(Moment, FollowUpWindow, ReadOnlySpan{SpecimenEvent})"/>.</returns>
    public static int Settling(
        Moment run, FollowUpWindow window, ReadOnlySpan<SpecimenEvent> specimens, ReadOnlySpan<int> knownDays, int day, out int next)
    {
        (var settling, next) = (-1, int.MaxValue);
        for (var i = FirstNear(run, window, specimens); i < specimens.Length && IsNear(run, window, specimens[i].Time); i++)
        {
            if (!window.Holds(run, specimens[i].Time)) continue;
            if (knownDays[i] <= day) settling = Prefer(settling, i, specimens);
            else next = Math.Min(next, knownDays[i]);
        }

        return settling;
    }

    /// <summary>Which of two specimens settles a run, the first being the earlier one in order of time.</summary>
    /// <param name="settling">Position of the specimen that settles it so far; -1 for none.</param>
    /// <param name="candidate">Position of a later one.</param>
    /// <param name="specimens">Specimens of the person, in order of time.</param>
    /// <returns>One of the two positions.</returns>
    public static int Prefer(int settling, int candidate, ReadOnlySpan<SpecimenEvent> specimens)
    {
        if (settling < 0) return candidate;
        var (first, second) = (specimens[settling], specimens[candidate]);
        if (!first.IsConclusive) return second.IsConclusive ? candidate : settling;
        return !first.IsPositive && second.IsPositive && first.Time.AtTheSameTimeAs(second.Time) ? candidate : settling;
    }

    /// <summary>What became of a run whose follow-up is due.</summary>
    /// <param name="run">When the run was collected.</param>
    /// <param name="window">The window of follow-up.</param>
    /// <param name="settling">The specimen found by <see cref="Settling(Moment, FollowUpWindow, ReadOnlySpan{SpecimenEvent})"/>; null for none.</param>
    /// <param name="dataAsOf">The second up to which the data are complete; null where there is no confirmatory export.</param>
    /// <param name="lagSeconds">Reporting lag in seconds.</param>
    /// <returns>
    /// Confirmed, refuted or unresolved by the specimen. With none: pending where the end of the window plus the reporting lag is
    /// later than <paramref name="dataAsOf"/>, else unverified.
    /// </returns>
    public static FollowUp Status(Moment run, FollowUpWindow window, SpecimenEvent? settling, long? dataAsOf, long lagSeconds) =>
        settling switch
        {
            { } specimen => Of(specimen.Result),
            null when dataAsOf is { } end && window.Closes(run) + lagSeconds > end => FollowUp.Pending,
            null => FollowUp.Unverified,
        };

    /// <summary>What a settling specimen makes of a run.</summary>
    /// <param name="result">Its result.</param>
    /// <returns>Confirmed, refuted or unresolved.</returns>
    public static FollowUp Of(ConfirmatoryResult result) => result switch
    {
        ConfirmatoryResult.Positive => FollowUp.Confirmed,
        ConfirmatoryResult.Negative => FollowUp.Refuted,
        _ => FollowUp.Unresolved,
    };

    // Local days and offsets (at most 18 hours) move a date-only moment by less than three days: outside of that no specimen can belong to the run.
    private static bool IsNear(Moment run, FollowUpWindow window, Moment specimen) =>
        specimen.Instant <= run.Instant + window.WithinSeconds + (4 * Moment.SecondsPerDay);

    private static int FirstNear(Moment run, FollowUpWindow window, ReadOnlySpan<SpecimenEvent> specimens)
    {
        var earliest = run.Instant - window.BeforeSeconds - (4 * Moment.SecondsPerDay);
        var (low, high) = (0, specimens.Length);
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (specimens[middle].Time.Instant < earliest) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
