namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>The exact test of one lot against the others within strata.</summary>
/// <remarks>
/// Given each stratum's events, the number that fall on the lot is the sum of independent hypergeometric (or binomial) numbers; its distribution is
/// their convolution, all of it positive terms: relative error below 1e-9 to tails of 1e-240, on the logarithmic scale below that. With one stratum
/// it is Fisher's exact test. What differs between strata, sites and seasons, cannot make a lot look bad. Events of one outbreak are not
/// independent: widen (see <see cref="LotRatio"/>). Source: Gart JJ, Biometrika 1970;57:471-475; Mehta CR, Patel NR, Gray R, J Am Stat Assoc
/// 1985;80:969-973 (both from memory).
/// </remarks>
public static class StratifiedExactTest
{
    // Two numbers whose probabilities differ by rounding only are equally likely, as in Comparison.FisherExact.
    private const double Tolerance = 1e-7;

    /// <summary>The test with whole trials: in each stratum the lot's events are hypergeometric.</summary>
    /// <param name="strata">The strata, in any order.</param>
    /// <returns>Observed, expected, and the tails; all tails 1, with a reason, where no stratum is informative.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    public static StratifiedTest Hypergeometric(IReadOnlyList<LotStratum> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        return Test(new StratifiedCount(strata.Select(stratum => new StratumCount(stratum))));
    }

    /// <summary>The test with weighted trials: in each stratum each event falls on the lot with the chance that is its share.</summary>
    /// <param name="strata">The strata, in any order.</param>
    /// <returns>Observed, expected, and the tails; all tails 1, with a reason, where no stratum is informative.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>For rare events this and <see cref="Hypergeometric"/> agree: at a rate r the variances differ by a factor 1 - r.</remarks>
    public static StratifiedTest Binomial(IReadOnlyList<SharedStratum> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        return Test(new StratifiedCount(strata.Select(stratum => new StratumCount(stratum))));
    }

    private static StratifiedTest Test(StratifiedCount count)
    {
        var (mean, variance) = count.Moments(0);
        if (count.InformativeStrata == 0) return new StratifiedTest(count, mean, variance, 1, 1, 1, 0, 0);
        var (from, probabilities) = count.Distribution(0);
        var observed = count.Observed;
        double Below(long to)
        {
            double sum = 0;
            for (var k = from; k <= to && k - from < probabilities.Length; k++) sum += probabilities[k - from];
            return sum;
        }

        double Above(long first)
        {
            double sum = 0;
            for (var k = from + probabilities.Length - 1; k >= first && k >= from; k--) sum += probabilities[k - from];
            return sum;
        }

        var high = count.ObservedInInformative > mean;
        var upper = observed <= count.Lowest ? 1 : high ? Above(observed) : Math.Max(0, 1 - Below(observed - 1));
        var lower = observed >= count.Highest ? 1 : high ? Math.Max(0, 1 - Above(observed + 1)) : Below(observed);
        var index = observed - from;
        var inside = index >= 0 && index < probabilities.Length;
        var twoSided = inside ? AtMostAsLikely(probabilities, probabilities[index] * (1 + Tolerance)) : Math.Min(upper, lower);
        return new StratifiedTest(
            count, mean, variance, Math.Min(1, upper), Math.Min(1, lower), twoSided,
            upper > 1e-240 ? Math.Min(0, Math.Log(upper)) : FarTail(count, up: true), lower > 1e-240 ? Math.Min(0, Math.Log(lower)) : FarTail(count, up: false));
    }

    /// <summary>The sum of all probabilities up to a limit, from the smallest, and 1 where none is above it.</summary>
    private static double AtMostAsLikely(double[] probabilities, double limit)
    {
        double sum = 0, rest = 0;
        var (left, right) = (0, probabilities.Length - 1);
        while (left <= right && (probabilities[left] <= limit || probabilities[right] <= limit))
        {
            // The two ends are the smallest that are left: the probabilities rise to one top and then fall.
            if (probabilities[left] <= probabilities[right]) sum += probabilities[left++];
            else sum += probabilities[right--];
        }

        for (; left <= right; left++) rest += probabilities[left];
        return rest == 0 ? 1 : Math.Min(1, sum);
    }

    /// <summary>The logarithm of a tail too small for a number: summed at the ratio that makes the observed number the expected one.</summary>
    private static double FarTail(StratifiedCount count, bool up)
    {
        var observed = count.Observed;
        var edge = up ? count.Highest : count.Lowest;
        var constant = observed - count.ObservedInInformative;
        var logRatio = count.LogRatioOfMean(observed == edge ? edge - constant + (up ? -0.5 : 0.5) : count.ObservedInInformative);
        var (from, probabilities) = count.Distribution(logRatio);
        double sum = 0;
        var sign = up ? 1 : -1;
        for (var k = observed; k - from >= 0 && k - from < probabilities.Length; k += sign) sum += probabilities[k - from] * Math.Exp(-(k - observed) * logRatio);
        return Math.Log(sum) - (observed * logRatio) + count.LogNormalizer(logRatio);
    }
}
