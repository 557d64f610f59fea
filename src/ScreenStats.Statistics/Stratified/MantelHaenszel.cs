using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Stratified;

/// <summary>Two groups compared within strata: the common odds ratio.</summary>
public static class MantelHaenszel
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "mantel-haenszel-robins-breslow-greenland";

    /// <summary>The common odds ratio of first to second group over the strata, with Robins, Breslow and Greenland's limits.</summary>
    /// <param name="strata">For each stratum the events and trials of both groups, in any order.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>
    /// The odds ratio with its interval; 0 without an interval where the first group has events in no stratum that compares; undefined where no
    /// stratum compares the groups, or the ratio is unbounded.
    /// </returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// With a, b events and others of the first group, c, d of the second, N all: R = Σ a d / N, S = Σ b c / N, ratio R / S. Variance of its
    /// logarithm Σ P R / (2 R²) + Σ (P S + Q R) / (2 R S) + Σ Q S / (2 S²) with P = (a + d) / N, Q = (b + c) / N. It holds for a few large and for many
    /// small strata. Source: Robins J, Breslow N, Greenland S, Biometrics 1986;42:311-323 (from memory).
    /// </remarks>
    public static Estimate OddsRatio(IReadOnlyList<TwoProportions> strata, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(strata);
        Guard.Confidence(confidence);
        var sums = Sums(strata);
        if (sums.R == 0 && sums.S == 0) return Estimate.Undefined(UndefinedReason.NoComparableStratum);
        if (sums.S == 0) return Estimate.Undefined(UndefinedReason.OddsRatioUnbounded);
        if (sums.R == 0) return Estimate.Point(0, MethodName);
        var log = Math.Log(sums.R / sums.S);
        var half = Quantile.Normal(confidence) * Math.Sqrt(sums.Variance);
        return Estimate.Of(Math.Exp(log), new Interval(Math.Exp(log - half), Math.Exp(log + half)), MethodName, confidence);
    }

    internal static (double R, double S, double Variance) Sums(IEnumerable<TwoProportions> strata)
    {
        double r = 0, s = 0, pr = 0, both = 0, qs = 0;
        foreach (var stratum in InOrder(strata))
        {
            double a = stratum.FirstSuccesses, b = stratum.FirstFailures, c = stratum.SecondSuccesses, d = stratum.SecondFailures;
            var n = a + b + c + d;
            var (p, q) = ((a + d) / n, (b + c) / n);
            var (ri, si) = (a / n * d, b / n * c);
            r += ri;
            s += si;
            pr += p * ri;
            both += (p * si) + (q * ri);
            qs += q * si;
        }

        return (r, s, (pr / (2 * r * r)) + (both / (2 * r * s)) + (qs / (2 * s * s)));
    }

    /// <summary>The strata with trials of both groups, in one order whatever the order given.</summary>
    internal static IEnumerable<TwoProportions> InOrder(IEnumerable<TwoProportions> strata) => strata
        .Where(stratum => !stratum.IsEmpty)
        .OrderBy(stratum => stratum.FirstTrials).ThenBy(stratum => stratum.SecondTrials).ThenBy(stratum => stratum.FirstSuccesses).ThenBy(stratum => stratum.SecondSuccesses);
}
