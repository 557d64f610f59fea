using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>The rate of each lot, drawn towards the others' as far as its own counts are few.</summary>
public static class EmpiricalBayes
{
    /// <summary>The posterior of each lot under the spread fitted to all of them.</summary>
    /// <param name="lots">The lots, in any order.</param>
    /// <param name="fit">The spread of their rates, for instance from <see cref="BetaBinomial.MaximumLikelihood"/>.</param>
    /// <param name="factor">How many times the program's rate is too high, finite and above 0.</param>
    /// <param name="confidence">The probability of the interval, in (0, 1).</param>
    /// <returns>One posterior for each lot, in the order given.</returns>
    /// <exception cref="ArgumentNullException">No list or no fit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A factor or a confidence outside its domain.</exception>
    /// <remarks>
    /// Beta(alpha + events, beta + trials - events). The program's rate is all events over all trials of the fit, the lot's own among them. The
    /// chance is the beta distribution's tail, relative error below 1e-10. Alpha and beta are taken as known, which makes the intervals a
    /// little too narrow with few lots. Where the lots are all alike, or no event was seen, nothing is known of how lots differ: no posterior,
    /// with that reason, rather than a chance of 0. Source: Efron B, Morris C, J Am Stat Assoc 1975;70:311-319 (from memory).
    /// </remarks>
    public static IReadOnlyList<LotPosterior> Of(IReadOnlyList<LotTally> lots, BetaBinomialFit fit, double factor = 2, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(lots);
        ArgumentNullException.ThrowIfNull(fit);
        Guard.Confidence(confidence);
        if (!(factor > 0) || !double.IsFinite(factor)) throw new ArgumentOutOfRangeException(nameof(factor), factor, "The factor must be a finite number above 0.");
        if (fit.Rates is not { } rates)
        {
            var undefined = Estimate.Undefined(fit.Reason ?? UndefinedReason.NotConverged);
            return [.. lots.Select(lot => new LotPosterior(lot, null, undefined, null, null))];
        }

        var threshold = factor * fit.Events / fit.Trials;
        return [.. lots.Select(lot =>
        {
            var posterior = new BetaDistribution(rates.Alpha + lot.Events, rates.Beta + (lot.Trials - lot.Events));
            var rate = Estimate.Of(posterior.Mean, posterior.EqualTailed(confidence).Including(posterior.Mean), "empirical Bayes, beta-binomial", confidence);
            var above = threshold >= 1 ? 0 : Binomial.BetaUpper(posterior.Alpha, posterior.Beta, threshold, 1 - threshold);
            return new LotPosterior(lot, posterior, rate, threshold, Math.Clamp(above, 0, 1));
        })];
    }
}
