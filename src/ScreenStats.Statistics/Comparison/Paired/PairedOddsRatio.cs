using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Comparison.Paired;

/// <summary>The odds ratio within pairs: pairs positive in the first reading only over pairs positive in the second only.</summary>
public static class PairedOddsRatio
{
    /// <summary>The conditional odds ratio with its exact interval.</summary>
    /// <param name="counts">The four counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio of the discordant pairs; unbounded above where only the first reading is ever positive alone; undefined without discordant pairs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// Among the discordant pairs the first-only ones are binomial with odds equal to the odds ratio, so the Clopper-Pearson limits p of their
    /// share give the limits p / (1 - p). Never covers less than the nominal share. Source: Fleiss JL, Statistical Methods for Rates and
    /// Proportions, 2nd edition 1981, section 8.1 (from memory).
    /// </remarks>
    public static ContrastEstimate ConditionalExact(PairedCounts counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        var unbounded = counts.Discordant == 0 ? UndefinedReason.NoDiscordantPairs : UndefinedReason.OddsRatioUnbounded;
        Bound value = counts.SecondOnly == 0 ? unbounded : (double)counts.FirstOnly / counts.SecondOnly;
        Bound upper = counts.SecondOnly == 0 ? unbounded : 1 / LowerOdds(counts.SecondOnly, counts.Discordant, confidence);
        return new ContrastEstimate(
            ContrastMeasure.OddsRatio, ContrastMethod.ConditionalExact, confidence, value,
            counts.FirstOnly == 0 ? 0.0 : LowerOdds(counts.FirstOnly, counts.Discordant, confidence), upper);
    }

    private static double LowerOdds(long count, long of, double confidence)
    {
        var limit = ProportionInterval.ClopperPearson(count, of, confidence).Lower!.Value;
        return limit / (1 - limit);
    }
}
