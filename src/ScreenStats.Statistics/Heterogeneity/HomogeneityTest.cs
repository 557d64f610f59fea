using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>Tests whether several groups have one rate.</summary>
public static class HomogeneityTest
{
    /// <summary>Pearson's and the likelihood-ratio chi-square of the groups by event and no event.</summary>
    /// <param name="groups">The groups, in any order; those without trials are left out.</param>
    /// <returns>The statistics with their p-values; a reason where fewer than two groups have trials, or nothing or everything was an event.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// X² = Σ (x - n p)² / (n p (1 - p)), G² = 2 Σ observed ln(observed / expected), each referred to chi-square with groups - 1 degrees of freedom;
    /// good where the smallest expected count is about 5 or more, else see <see cref="ExactHomogeneity"/>. Runs of the same person count as
    /// independent. Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 7.4.6.
    /// </remarks>
    public static HomogeneityResult ChiSquare(IReadOnlyList<GroupCount> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        GroupCount[] used = [.. groups.Where(group => group.Trials > 0)];
        var (events, trials) = GroupCount.Sum(used);
        if (ReasonOf(used, events, trials) is { } reason) return new HomogeneityResult(used.Length, events, trials, null, null, null, null, null, null, reason);
        var p = (double)events / trials;
        var q = (double)(trials - events) / trials;
        double pearson = 0, likelihood = 0;
        foreach (var group in used)
        {
            // The distance from the expected count, from one exact integer.
            var distance = (double)(((Int128)group.Events * trials) - ((Int128)group.Trials * events)) / trials;
            pearson += distance * distance / (group.Trials * p * q);
            likelihood += 2 * (Binomial.Deviance(group.Events, group.Trials * p) + Binomial.Deviance(group.Trials - group.Events, group.Trials * q));
        }

        var degrees = used.Length - 1;
        return new HomogeneityResult(
            used.Length, events, trials, pearson, likelihood, degrees, GammaTail.ChiSquareUpper(degrees, pearson), GammaTail.ChiSquareUpper(degrees, likelihood),
            used.Min(group => group.Trials) * Math.Min(p, q), null);
    }

    internal static UndefinedReason? ReasonOf(IReadOnlyList<GroupCount> used, long events, long trials) =>
        trials == 0 ? UndefinedReason.NoTrials
        : used.Count < 2 ? UndefinedReason.FewerThanTwoGroups
        : events == 0 ? UndefinedReason.NoEvents
        : events == trials ? UndefinedReason.OnlyEvents
        : null;
}
