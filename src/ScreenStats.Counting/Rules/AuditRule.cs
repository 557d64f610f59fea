using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>Negatives are verified by audit only.</summary>
public static class AuditRule
{
    /// <summary>The run that an audit specimen verifies: the person's latest negative run whose audit window holds the specimen.</summary>
    /// <param name="specimen">When the audit specimen was collected.</param>
    /// <param name="window">The audit window.</param>
    /// <param name="runs">Counted runs of the person, in order of time.</param>
    /// <returns>Position of the run; -1 where there is none.</returns>
    public static int RunOf(Moment specimen, FollowUpWindow window, ReadOnlySpan<RunEvent> runs)
    {
        for (var i = AfterNear(specimen, window, runs) - 1; i >= 0; i--)
        {
            if (runs[i].Time.Instant < specimen.Instant - window.WithinSeconds - (4 * Moment.SecondsPerDay)) return -1;
            if (runs[i].Outcome == Outcome.Negative && window.Holds(runs[i].Time, specimen)) return i;
        }

        return -1;
    }

    /// <summary>What an audit found: missed, agreed or unresolved.</summary>
    /// <param name="result">Result of the specimen that settles the audited run.</param>
    /// <returns>The follow-up of the negative run.</returns>
    public static FollowUp Status(ConfirmatoryResult result) => result switch
    {
        ConfirmatoryResult.Positive => FollowUp.Missed,
        ConfirmatoryResult.Negative => FollowUp.Agreed,
        _ => FollowUp.Unresolved,
    };

    private static int AfterNear(Moment specimen, FollowUpWindow window, ReadOnlySpan<RunEvent> runs)
    {
        var latest = specimen.Instant + window.BeforeSeconds + (4 * Moment.SecondsPerDay);
        var (low, high) = (0, runs.Length);
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (runs[middle].Time.Instant <= latest) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
