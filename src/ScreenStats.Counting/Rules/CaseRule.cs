namespace ScreenStats.Counting.Rules;

/// <summary>Cases are people, not runs.</summary>
/// <remarks>
/// A confirmed run is a case where neither (1) a confirmatory positive lies in the episode days before the run, outside of the run's own
/// follow-up window, nor (2) an earlier confirmed run of the person was settled by a specimen later than the episode days before this run.
/// Specimens in the run's own window are its own follow-up, also those collected up to confirmBeforeHours before it, and do not make it
/// an old case; (2) keeps a second run of the same follow-up from being a second case. Days are local calendar days, ends included.
/// Every confirmatory positive counts as "before", whatever its reason: an infection found by audit or between screens is not found again.
/// </remarks>
public static class CaseRule
{
    /// <summary>True where a confirmatory positive belongs to the past of an episode: within the episode days before.</summary>
    /// <param name="earlier">Local day number of the earlier positive.</param>
    /// <param name="day">Local day number of the run or specimen that is judged.</param>
    /// <param name="episodeDays">Episode days, at least 0.</param>
    /// <returns>Whether both belong to one episode.</returns>
    public static bool SameEpisode(int earlier, int day, int episodeDays) => (long)earlier >= (long)day - episodeDays;

    /// <summary>True where a confirmatory positive lies before the run's own follow-up and within the episode days.</summary>
    /// <param name="run">When the confirmed run was collected.</param>
    /// <param name="window">The window of follow-up.</param>
    /// <param name="positives">Times of the person's confirmatory positives, in order.</param>
    /// <param name="episodeDays">Episode days, at least 0.</param>
    /// <returns>Whether the run belongs to an episode that is already known.</returns>
    public static bool HasEarlierPositive(Moment run, FollowUpWindow window, ReadOnlySpan<Moment> positives, int episodeDays)
    {
        for (var i = Moment.CountUpTo(positives, run.Instant + (4 * Moment.SecondsPerDay)) - 1; i >= 0; i--)
        {
            if (!window.StartsAfter(run, positives[i])) continue;
            if (SameEpisode(positives[i].DayNumber, run.DayNumber, episodeDays)) return true;
            if (positives[i].DayNumber < run.DayNumber - episodeDays - 4) return false;
        }

        return false;
    }
}
