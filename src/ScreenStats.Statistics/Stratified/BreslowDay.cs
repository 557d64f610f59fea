using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Stratified;

/// <summary>Tests whether one odds ratio holds in all strata, so that one figure may stand for them.</summary>
public static class BreslowDay
{
    /// <summary>Breslow and Day's test around the Mantel-Haenszel odds ratio, with Tarone's correction beside it.</summary>
    /// <param name="strata">For each stratum the events and trials of both groups, in any order.</param>
    /// <returns>Both statistics; a reason where fewer than two strata compare the groups, or the common odds ratio is 0 or unbounded.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// Σ (a - A)² / V, where A is the count with the stratum's margins and the common odds ratio, 1 / V = 1/A + 1/B + 1/C + 1/D; Tarone subtracts
    /// (Σ(a - A))² / ΣV. Chi-square with strata - 1 degrees of freedom; for a few large strata, not for many small ones. Source: Breslow NE, Day NE,
    /// Statistical Methods in Cancer Research I, 1980, section 4.4; Tarone RE, Biometrika 1985;72:91-95 (from memory).
    /// </remarks>
    public static BreslowDayResult Test(IReadOnlyList<TwoProportions> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        TwoProportions[] used = [.. MantelHaenszel.InOrder(strata).Where(stratum =>
            stratum.FirstSuccesses + stratum.SecondSuccesses > 0 && stratum.FirstFailures + stratum.SecondFailures > 0)];
        BreslowDayResult Without(UndefinedReason reason) => new(strata.Count, used.Length, null, null, null, null, null, null, reason);
        if (used.Length == 0) return Without(UndefinedReason.NoComparableStratum);
        if (used.Length == 1) return Without(UndefinedReason.OneStratumOnly);
        var (r, s, _) = MantelHaenszel.Sums(used);
        if (s == 0) return Without(UndefinedReason.OddsRatioUnbounded);
        if (r == 0) return Without(UndefinedReason.OddsRatioZero);
        var ratio = r / s;
        double statistic = 0, distances = 0, variances = 0;
        foreach (var stratum in used)
        {
            double n1 = stratum.FirstTrials, n2 = stratum.SecondTrials, m = stratum.FirstSuccesses + stratum.SecondSuccesses;
            var a = Fitted(n1, n2, m, ratio);
            var variance = 1 / ((1 / a) + (1 / (n1 - a)) + (1 / (m - a)) + (1 / (n2 - m + a)));
            var distance = stratum.FirstSuccesses - a;
            statistic += distance * distance / variance;
            distances += distance;
            variances += variance;
        }

        var corrected = Math.Max(0, statistic - (distances * distances / variances));
        var degrees = used.Length - 1;
        return new BreslowDayResult(
            strata.Count, used.Length, ratio, statistic, GammaTail.ChiSquareUpper(degrees, statistic), corrected, GammaTail.ChiSquareUpper(degrees, corrected), degrees, null);
    }

    /// <summary>The events of the first group with the margins and the odds ratio: a (n2 - m + a) = ratio (n1 - a) (m - a).</summary>
    private static double Fitted(double n1, double n2, double m, double ratio)
    {
        var quadratic = 1 - ratio;
        var linear = n2 - m + (ratio * (n1 + m));
        var constant = -ratio * n1 * m;
        if (Math.Abs(quadratic) < 1e-12) return -constant / linear;
        var root = Math.Sqrt((linear * linear) - (4 * quadratic * constant));

        // The root inside the margins, written without a difference of nearly equal numbers; linear can be negative where the ratio is small.
        return linear >= 0 ? -2 * constant / (linear + root) : (root - linear) / (2 * quadratic);
    }
}
