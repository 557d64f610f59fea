using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison.Paired;

/// <summary>McNemar's exact test: whether the first reading of a pair is positive as often as the second.</summary>
/// <remarks>
/// Only the pairs whose readings differ count: of n such pairs, those positive in the first reading only are binomial with rate 1/2.
/// Without any, every p-value is 1. Source: McNemar Q, Psychometrika 1947;12:153-157; exact form and mid-P: Fagerland MW, Lydersen S,
/// Laake P, BMC Med Res Methodol 2013;13:91 (from memory).
/// </remarks>
public static class McNemar
{
    /// <summary>The exact two-sided p-value: twice the smaller tail, at most 1.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>A p-value in [0, 1].</returns>
    /// <remarks>Rejects true hypotheses less often than the level says.</remarks>
    public static double TwoSided(PairedCounts counts) =>
        Math.Min(1, 2 * AtMost(Math.Min(counts.FirstOnly, counts.SecondOnly), counts.Discordant));

    /// <summary>The two-sided mid-P: the exact p-value less the chance of the observed number.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>A p-value in [0, 1].</returns>
    /// <remarks>
    /// Twice the smaller tail with the observed number counting half; where both discordant counts are equal 1 less half its chance.
    /// Rejects true hypotheses about as often as the level says.
    /// </remarks>
    public static double TwoSidedMidP(PairedCounts counts)
    {
        if (counts.Discordant == 0) return 1;
        var smaller = Math.Min(counts.FirstOnly, counts.SecondOnly);
        var point = Binomial.Probability(smaller, counts.Discordant, 0.5, 0.5);
        return counts.FirstOnly == counts.SecondOnly
            ? 1 - (point / 2)
            : (2 * AtMost(smaller - 1, counts.Discordant)) + point;
    }

    /// <summary>The chance of at least as many first-only pairs as observed: small where the first reading is positive more often.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>A p-value in [0, 1].</returns>
    public static double Greater(PairedCounts counts) => AtMost(counts.SecondOnly, counts.Discordant);

    /// <summary>The chance of at most as many first-only pairs as observed: small where the first reading is positive less often.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>A p-value in [0, 1].</returns>
    public static double Less(PairedCounts counts) => AtMost(counts.FirstOnly, counts.Discordant);

    private static double AtMost(long count, long of) =>
        count < 0 ? 0 : count >= of ? 1 : Binomial.BetaLower(of - count, count + 1.0, 0.5, 0.5);
}
