using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.RobustErrors;

/// <summary>Whether residuals lean on those of the periods before.</summary>
public static class Autocorrelation
{
    /// <summary>Durbin and Watson's statistic: near 2 where neighbours are independent, towards 0 where they are alike, towards 4 where they alternate.</summary>
    /// <param name="residuals">Residuals in order of time, finite.</param>
    /// <returns>The statistic in [0, 4]; null for fewer than two residuals or where all are 0.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A residual that is not finite.</exception>
    /// <remarks>Σ (e_t - e_(t-1))² / Σ e_t². Source: Durbin J, Watson GS, Biometrika 1950;37:409-428 (from memory).</remarks>
    public static double? DurbinWatson(IReadOnlyList<double> residuals)
    {
        var all = Checked(residuals);
        var sum = all.Sum(e => e * e);
        return all.Length < 2 || !(sum > 0) ? null : Enumerable.Range(1, all.Length - 1).Sum(t => (all[t] - all[t - 1]) * (all[t] - all[t - 1])) / sum;
    }

    /// <summary>Ljung and Box's test of the first autocorrelations together.</summary>
    /// <param name="residuals">Residuals in order of time, finite.</param>
    /// <param name="lags">How many autocorrelations, 1 or more, fewer than residuals.</param>
    /// <param name="fitted">Coefficients of a time-series model that were fitted, taken off the degrees of freedom; 0 to below <paramref name="lags"/>.</param>
    /// <returns>The test; a reason for fewer residuals than lags plus one, or where all are alike.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// n (n + 2) Σ r_k² / (n - k) with r_k the autocorrelations around the mean, against chi-square. Source: Ljung GM, Box GEP, Biometrika 1978;65:297-303 (from memory).
    /// </remarks>
    public static PortmanteauResult LjungBox(IReadOnlyList<double> residuals, int lags, int fitted = 0)
    {
        var all = Checked(residuals);
        ArgumentOutOfRangeException.ThrowIfLessThan(lags, 1);
        if (fitted < 0 || fitted >= lags) throw new ArgumentOutOfRangeException(nameof(fitted), fitted, "The fitted coefficients must be 0 or more, and fewer than the lags.");
        if (all.Length <= lags) return new PortmanteauResult(null, null, null, UndefinedReason.NoDegreesOfFreedom);
        var mean = all.Average();
        double[] centred = [.. all.Select(e => e - mean)];
        var sum = centred.Sum(e => e * e);
        if (all.All(e => e == all[0]) || !(sum > 0)) return new PortmanteauResult(null, null, null, UndefinedReason.PointsAllAlike);
        double n = all.Length;
        var statistic = n * (n + 2) * Enumerable.Range(1, lags).Sum(k =>
        {
            var r = Enumerable.Range(k, all.Length - k).Sum(t => centred[t] * centred[t - k]) / sum;
            return r * r / (n - k);
        });
        return new PortmanteauResult(statistic, lags - fitted, GammaTail.ChiSquareUpper(lags - fitted, statistic), null);
    }

    private static double[] Checked(IReadOnlyList<double> residuals)
    {
        ArgumentNullException.ThrowIfNull(residuals);
        foreach (var residual in residuals) Guard.Finite(residual, nameof(residuals));
        return [.. residuals];
    }
}
