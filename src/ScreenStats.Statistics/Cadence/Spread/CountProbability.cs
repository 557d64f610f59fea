using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>Negative binomial probabilities by mean and size, without differences of large logarithms.</summary>
/// <remarks>Source: Loader C, "Fast and accurate computation of binomial probabilities", 2000, section on the negative binomial (from memory).</remarks>
internal static class CountProbability
{
    /// <summary>The chance of a count; no size is Poisson.</summary>
    public static double Of(long count, double mean, double? size)
    {
        if (mean == 0) return count == 0 ? 1 : 0;
        if (size is not { } k || k > 1e17)
        {
            return count == 0 ? Math.Exp(-mean) : Math.Exp(-Binomial.StirlingRemainder(count) - Binomial.Deviance(count, mean)) / Math.Sqrt(2 * Math.PI * count);
        }

        if (count == 0) return Math.Exp(-k * Precise.LogOnePlus(mean / k));
        var total = k + count;
        var exponent = Binomial.StirlingRemainder(total) - Binomial.StirlingRemainder(k) - Binomial.StirlingRemainder(count)
            - Binomial.Deviance(k, total * (k / (k + mean))) - Binomial.Deviance(count, total * (mean / (k + mean)));
        return Math.Exp(exponent) * Math.Sqrt(k / (2 * Math.PI * total * count));
    }
}
