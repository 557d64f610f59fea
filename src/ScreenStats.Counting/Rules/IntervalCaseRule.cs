namespace ScreenStats.Counting.Rules;

/// <summary>Infections that came to light between two screens.</summary>
/// <remarks>
/// An interval case is a positive specimen, taken for another reason than audit, where (1) the person's latest counted run before it
/// is negative, (2) it settles no positive or inconclusive run, also none that was collected shortly after it, and (3) the person has no
/// other confirmatory positive in the episode days before it: cases are people, and one infection is one case. It is tabulated by days since
/// that run and never enters sensitivity, specificity or negative predictive value.
/// Runs kept out of the figures (symptomatic, exposed) and control runs are not "that run": a person screened negative on Monday whose
/// symptoms led to a positive test on Thursday is an interval case of Monday's screen.
/// </remarks>
public static class IntervalCaseRule
{
    /// <summary>
    /// The latest counted run before a specimen: not later to the second, or not on a later local day where either has only a date.
    /// </summary>
    /// <param name="specimen">When the specimen was collected.</param>
    /// <param name="runs">Counted runs of the person, in order of time.</param>
    /// <returns>Position of the run; -1 where the specimen comes before every run.</returns>
    public static int LatestRunBefore(Moment specimen, ReadOnlySpan<RunEvent> runs)
    {
        var (low, high) = (0, runs.Length);
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (runs[middle].Time.Instant <= specimen.Instant + (4 * Moment.SecondsPerDay)) low = middle + 1;
            else high = middle;
        }

        for (var i = low - 1; i >= 0; i--)
        {
            if (IsBefore(runs[i].Time, specimen)) return i;
        }

        return -1;
    }

    private static bool IsBefore(Moment run, Moment specimen) => run.WholeDaysTo(specimen)
        ? run.DayNumber <= specimen.DayNumber
        : run.Instant <= specimen.Instant;
}
