using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Stratified;

/// <summary>Tests whether two groups differ within strata, against a common direction.</summary>
public static class CochranMantelHaenszel
{
    /// <summary>The chi-square test with one degree of freedom.</summary>
    /// <param name="strata">For each stratum the events and trials of both groups, in any order.</param>
    /// <returns>The statistic with and without continuity correction; a reason where no stratum compares the groups.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// (Σ(a - E))² / ΣV, with E = n1 m / N and V = n1 n2 m (N - m) / (N² (N - 1)) of m events and N trials; corrected, the distance is made smaller by ½ (not
    /// below 0). Finds little where strata point opposite ways: see <see cref="BreslowDay"/>. Source: Mantel N, Haenszel W, J Natl Cancer Inst
    /// 1959;22:719-748.
    /// </remarks>
    public static CochranMantelHaenszelResult Test(IReadOnlyList<TwoProportions> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        long observed = 0;
        var informative = 0;
        double expected = 0, variance = 0, distance = 0;
        foreach (var stratum in MantelHaenszel.InOrder(strata))
        {
            double n1 = stratum.FirstTrials, n2 = stratum.SecondTrials, n = n1 + n2;
            double events = (double)stratum.FirstSuccesses + stratum.SecondSuccesses, others = n - events;
            if (events == 0 || others == 0) continue;
            informative++;
            observed += stratum.FirstSuccesses;
            expected += n1 * events / n;
            distance += (((double)stratum.FirstSuccesses * stratum.SecondFailures) - ((double)stratum.FirstFailures * stratum.SecondSuccesses)) / n;
            variance += n1 / n * (n2 / n) * events * others / (n - 1);
        }

        if (informative == 0) return new CochranMantelHaenszelResult(strata.Count, 0, 0, null, null, null, null, null, UndefinedReason.NoComparableStratum);
        var statistic = distance * distance / variance;
        var corrected = Math.Pow(Math.Max(0, Math.Abs(distance) - 0.5), 2) / variance;
        return new CochranMantelHaenszelResult(
            strata.Count, informative, observed, expected, statistic, GammaTail.ChiSquareUpper(1, statistic), corrected, GammaTail.ChiSquareUpper(1, corrected), null);
    }
}
