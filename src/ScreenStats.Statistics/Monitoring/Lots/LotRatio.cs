using MathNet.Numerics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>How many times the others' rate a lot's rate is, with exact limits.</summary>
/// <remarks>
/// <para>Given each stratum's events, the lot's number at a ratio r has the null probabilities times r to its power (Cornfield): a ratio of odds with
/// whole trials, of rates with shares. The figure is the ratio at which the observed number is the expected one (conditional maximum
/// likelihood), the limits are the ratios at which a number as large, or as small, has half of 1 - confidence left. Coverage is never below the
/// stated one. The limits of observed over expected are the expected numbers at those ratios over that at 1.</para>
/// <para>Overdispersion f: the tail of the limits is that of a normal quantile times the square root of f, at most 30; with many events this
/// widens the interval by the square root of f on the logarithmic scale, with few it stays as skew as the exact one, and it needs no event. Source: Gart JJ, Biometrika
/// 1970;57:471-475; Mehta CR, Patel NR, Gray R, J Am Stat Assoc 1985;80:969-973 (both from memory); the widening is ours.</para>
/// </remarks>
public static class LotRatio
{
    private const double FarthestQuantile = 30;

    /// <summary>The ratio with whole trials: of the odds of an event.</summary>
    /// <param name="strata">The strata, in any order.</param>
    /// <param name="options">Confidence, overdispersion and the material ratio; their defaults where null.</param>
    /// <returns>Both ratios; undefined with the reason where no stratum is informative.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain, named.</exception>
    public static LotRatioEstimate Hypergeometric(IReadOnlyList<LotStratum> strata, LotRatioOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(strata);
        return Of(new StratifiedCount(strata.Select(stratum => new StratumCount(stratum))), options ?? new LotRatioOptions(), "exact conditional limits, hypergeometric");
    }

    /// <summary>The ratio with weighted trials: of rates.</summary>
    /// <param name="strata">The strata, in any order.</param>
    /// <param name="options">Confidence, overdispersion and the material ratio; their defaults where null.</param>
    /// <returns>Both ratios; undefined with the reason where no stratum is informative.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain, named.</exception>
    public static LotRatioEstimate Binomial(IReadOnlyList<SharedStratum> strata, LotRatioOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(strata);
        return Of(new StratifiedCount(strata.Select(stratum => new StratumCount(stratum))), options ?? new LotRatioOptions(), "exact conditional limits, binomial");
    }

    private static LotRatioEstimate Of(StratifiedCount count, LotRatioOptions options, string method)
    {
        options.Check();
        var (expected, _) = count.Moments(0);
        if (count.InformativeStrata == 0)
        {
            var none = Estimate.Undefined(UndefinedReason.NoInformativeStratum);
            return new LotRatioEstimate(count.ObservedInInformative, expected, none, none, options);
        }

        var observed = count.Observed;
        var (isLowest, isHighest) = (observed == count.Lowest, observed == count.Highest);
        var centre = count.LogRatioOfMean(count.ObservedInInformative + (isLowest ? 0.5 : isHighest ? -0.5 : 0));
        var (from, probabilities) = count.Distribution(centre);
        var logs = Array.ConvertAll(probabilities, Math.Log);
        var target = LogTail(options);
        double Limit(bool lower) => centre + Solve(shift => LogTailAt(logs, (int)(observed - from), shift, up: lower) - target, lower);

        double? lowerLimit = isLowest ? null : Limit(lower: true);
        double? upperLimit = isHighest ? null : Limit(lower: false);
        double OfMean(double logRatio) => count.Moments(logRatio).Mean / expected;
        var highest = count.Highest - (observed - count.ObservedInInformative);
        var lowest = count.Lowest - (observed - count.ObservedInInformative);
        var toExpected = count.ObservedInInformative / expected;
        var ends = new Interval(
            Math.Min(toExpected, lowerLimit is { } l ? OfMean(l) : lowest / expected), Math.Max(toExpected, upperLimit is { } u ? OfMean(u) : highest / expected));

        var value = isLowest ? 0 : Ratio(centre);
        var low = lowerLimit is { } logLow ? Math.Min(Ratio(logLow), isHighest ? double.MaxValue : value) : 0;
        var toOthers = upperLimit is { } logHigh
            ? Estimate.Of(value, new Interval(low, Math.Max(value, Ratio(logHigh))), method, options.Confidence)
            : Estimate.Unbounded(low, method, options.Confidence, UndefinedReason.NoEventsInOtherLots);
        return new LotRatioEstimate(
            count.ObservedInInformative, expected, toOthers, Estimate.Of(toExpected, ends, method, options.Confidence), options);
    }

    private static double Ratio(double logarithm) => Math.Exp(Math.Clamp(logarithm, -700, 700));

    /// <summary>The logarithm of the probability left at each end.</summary>
    private static double LogTail(LotRatioOptions options)
    {
        var tail = (1 - options.Confidence) / 2;
        if (options.Overdispersion <= 1) return Math.Log(tail);
        var z = Math.Min(FarthestQuantile, Quantile.NormalTail(tail) * Math.Sqrt(options.Overdispersion));
        return Math.Log(SpecialFunctions.Erfc(z / Math.Sqrt(2)) / 2);
    }

    /// <summary>The logarithm of the chance of at least (or at most) the observed number, at a ratio further by a shift of its logarithm.</summary>
    private static double LogTailAt(double[] logs, int observed, double shift, bool up)
    {
        var top = double.NegativeInfinity;
        for (var i = 0; i < logs.Length; i++) top = Math.Max(top, logs[i] + ((i - observed) * shift));
        double tail = 0, rest = 0;
        for (var i = 0; i < logs.Length; i++)
        {
            var term = Math.Exp(logs[i] + ((i - observed) * shift) - top);
            if (up ? i >= observed : i <= observed) tail += term;
            else rest += term;
        }

        return tail > rest ? Precise.LogOnePlus(-rest / (tail + rest)) : tail > 0 ? Math.Log(tail / (tail + rest)) : double.NegativeInfinity;
    }

    /// <summary>The root of a function that rises (the lower limit) or falls with the shift.</summary>
    private static double Solve(Func<double, double> excess, bool rises)
    {
        double Finite(double shift) => Math.Max(excess(shift), -1e6);
        double step = rises ? -0.5 : 0.5, near = 0, far = step;

        // At a shift of 0 the tail holds about half; outwards it falls below the target.
        while (Finite(near) < 0) near -= step;
        while (Finite(far) > 0)
        {
            near = far;
            far += step *= 2;
        }

        return Root.Between(Finite, near, far);
    }
}
