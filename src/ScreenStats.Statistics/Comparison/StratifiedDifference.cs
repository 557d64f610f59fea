using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison;

/// <summary>The difference of two proportions within strata, where both groups are seen in the same places and times.</summary>
public static class StratifiedDifference
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "mantel-haenszel-sato";

    /// <summary>The common difference of two proportions over strata: Mantel-Haenszel's weights, Sato's variance.</summary>
    /// <param name="strata">For each stratum events and trials of the first and of the second group; counts of 0 or more, events at most trials.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <param name="designEffect">What the variance is multiplied by, 1 or more.</param>
    /// <returns>First minus second, with the interval clipped to [-1, 1]; undefined where no stratum holds trials of both groups.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// d = sum(w (x1/n1 - x2/n2)) / sum(w), w = n1 n2 / N, N = n1 + n2: a stratum without trials of one group has no weight. Variance
    /// (d sum(P) + sum(Q)) / sum(w)², P = (n1² x2 - n2² x1 + n1 n2 (n2 - n1)/2)/N², Q = (x1 (n2 - x2) + x2 (n1 - x1))/(2 N). The interval is
    /// d ± z times its root; it holds for a few large and for many small strata. Where no stratum has an event (or a non-event) the
    /// variance is 0 and nothing is known of the difference's chance: the limits are then undefined, and only the value stands.
    /// Source: Mantel N, Haenszel W, J Natl Cancer Inst 1959;22:719-748; Greenland S, Robins JM, Biometrics 1985;41:55-68; Sato T, Biometrics
    /// 1989;45:1323-1324 (from memory).
    /// </remarks>
    public static Estimate MantelHaenszel(
        IEnumerable<(long FirstEvents, long FirstTrials, long SecondEvents, long SecondTrials)> strata, double confidence = 0.95, double designEffect = 1)
    {
        ArgumentNullException.ThrowIfNull(strata);
        Guard.Confidence(confidence);
        Guard.DesignEffect(designEffect);
        double weights = 0, differences = 0, p = 0, q = 0;
        foreach (var (x1, n1, x2, n2) in strata)
        {
            Guard.Counts(x1, n1);
            Guard.Counts(x2, n2);
            if (n1 == 0 || n2 == 0) continue;
            double a = x1, m = n1, b = x2, n = n2;
            var total = m + n;
            weights += m / total * n;
            differences += ((a * n) - (b * m)) / total;
            p += ((m / total * (m / total) * b) - (n / total * (n / total) * a)) + (m / total * (n / total) * (n - m) / 2);
            q += ((a * (n - b)) + (b * (m - a))) / (2 * total);
        }

        if (weights == 0) return Estimate.Undefined(UndefinedReason.NoSharedStratum);
        var value = Math.Clamp(differences / weights, -1, 1);
        var variance = ((value * p) + q) / weights / weights;
        if (variance <= 0) return Estimate.Point(value, MethodName);
        var half = Quantile.Normal(confidence) * Math.Sqrt(designEffect * variance);
        return Estimate.Of(value, new Interval(Math.Max(-1, value - half), Math.Min(1, value + half)), MethodName, confidence);
    }
}
