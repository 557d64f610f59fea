using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>The spread of the rates of lots, as a beta distribution.</summary>
public static class BetaBinomial
{
    // Logarithms of the spread 1 / (alpha + beta): from lots all but alike to all but opposite.
    private const int Least = -34;
    private const int Most = 12;

    /// <summary>The most likely distribution.</summary>
    /// <param name="lots">The lots, in any order; those without trials are left out.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// Beta-binomial likelihood in the mean and the spread 1 / (alpha + beta). For a given spread it is concave in the mean; over the spread the
    /// slope of the profile is searched for all its roots on a lattice of its logarithm, then each is solved for. Where no spread is more
    /// likely than none the lots are all alike: their counts vary no more than a binomial's. Source: Griffiths DA, Biometrics 1973;29:637-648
    /// (from memory).
    /// </remarks>
    public static BetaBinomialFit MaximumLikelihood(IReadOnlyList<LotTally> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        var used = lots.Where(lot => lot.Trials > 0).ToArray();
        var (events, trials) = (used.Sum(lot => lot.Events), used.Sum(lot => lot.Trials));
        BetaBinomialFit Without(UndefinedReason reason, double? log = null) => new(used.Length, events, trials, null, log, reason);
        if (trials == 0) return Without(UndefinedReason.NoTrials);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (events == trials) return Without(UndefinedReason.OnlyEvents);
        if (used.Length < 2) return Without(UndefinedReason.FewerThanTwoLots);
        if (used.All(lot => lot.Trials == 1)) return Without(UndefinedReason.OneTrialInEachCluster);
        if (used.All(lot => lot.Events == 0 || lot.Events == lot.Trials)) return Without(UndefinedReason.LotsAllOrNothing);

        var pooled = (double)events / trials;
        var alike = used.Sum(lot => Coefficient(lot) + (lot.Events == 0 ? 0 : lot.Events * Math.Log(pooled)) + ((lot.Trials - lot.Events) * Precise.LogOnePlus(-pooled)));
        (double Spread, double Mean, double Log)? best = null;
        var mean = pooled;
        double Slope(double logSpread)
        {
            mean = MeanAt(used, Math.Exp(logSpread), mean);
            return SpreadSlope(used, Math.Exp(logSpread), mean);
        }

        var before = Slope(Least);
        for (var step = Least + 1; step <= Most; step++)
        {
            var slope = Slope(step);
            if (before > 0 && slope <= 0)
            {
                var at = Root.Between(Slope, step - 1, step);
                var spread = Math.Exp(at);
                mean = MeanAt(used, spread, mean);
                var log = LogLikelihood(used, spread, mean);
                if (best is not { } b || log > b.Log) best = (spread, mean, log);
            }

            before = slope;
        }

        if (best is not { } found || !(found.Log > alike + (1e-11 * Math.Abs(alike)))) return Without(UndefinedReason.LotsAllAlike, alike);
        return new BetaBinomialFit(
            used.Length, events, trials, new BetaDistribution(found.Mean / found.Spread, (1 - found.Mean) / found.Spread), found.Log, null);
    }

    /// <summary>The distribution whose mean and standard deviation are those of the lots' rates.</summary>
    /// <param name="lots">The lots, in any order; those without trials are left out.</param>
    /// <returns>The fit, without likelihood, or the reason why there is none.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// Rough: chance alone spreads the rates too, and a lot with few trials counts as much as one with many. Source: Gelman A et al., Bayesian
    /// Data Analysis, section 5.1 (from memory).
    /// </remarks>
    public static BetaBinomialFit Moments(IReadOnlyList<LotTally> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        var used = lots.Where(lot => lot.Trials > 0).ToArray();
        var (events, trials) = (used.Sum(lot => lot.Events), used.Sum(lot => lot.Trials));
        BetaBinomialFit Without(UndefinedReason reason) => new(used.Length, events, trials, null, null, reason);
        if (trials == 0) return Without(UndefinedReason.NoTrials);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (events == trials) return Without(UndefinedReason.OnlyEvents);
        if (used.Length < 2) return Without(UndefinedReason.FewerThanTwoLots);
        var rates = used.Select(lot => (double)lot.Events / lot.Trials).ToArray();
        var mean = rates.Average();
        var variance = rates.Sum(rate => (rate - mean) * (rate - mean)) / (rates.Length - 1);
        if (!(variance > 1e-20 * mean)) return Without(UndefinedReason.LotsAllAlike);
        var weight = (mean * (1 - mean) / variance) - 1;
        return weight > 0
            ? new BetaBinomialFit(used.Length, events, trials, new BetaDistribution(mean * weight, (1 - mean) * weight), null, null)
            : Without(UndefinedReason.LotsAllOrNothing);
    }

    private static double Coefficient(LotTally lot)
    {
        var few = Math.Min(lot.Events, lot.Trials - lot.Events);
        return Rising.Logarithms(lot.Trials - few + 1, few) - Rising.Logarithms(1, few);
    }

    private static double LogLikelihood(LotTally[] lots, double spread, double mean)
    {
        var (alpha, beta) = (mean / spread, (1 - mean) / spread);
        return lots.Sum(lot => Coefficient(lot) + Rising.Logarithms(alpha, lot.Events) + Rising.Logarithms(beta, lot.Trials - lot.Events) - Rising.Logarithms(alpha + beta, lot.Trials));
    }

    /// <summary>The slope of the logarithm of the likelihood over that of the spread.</summary>
    private static double SpreadSlope(LotTally[] lots, double spread, double mean)
    {
        var (alpha, beta) = (mean / spread, (1 - mean) / spread);
        return lots.Sum(lot => Rising.Shares(alpha, lot.Events) + Rising.Shares(beta, lot.Trials - lot.Events) - Rising.Shares(alpha + beta, lot.Trials));
    }

    /// <summary>The most likely mean at a spread: Newton steps on its logit, kept in a bracket; the likelihood is concave in the mean.</summary>
    private static double MeanAt(LotTally[] lots, double spread, double start)
    {
        double low = 0, high = 1, mean = start;
        for (var step = 0; step < 200; step++)
        {
            var (alpha, beta) = (mean / spread, (1 - mean) / spread);
            double slope = 0, curve = 0;
            foreach (var lot in lots)
            {
                slope += (Rising.Reciprocals(alpha, lot.Events) - Rising.Reciprocals(beta, lot.Trials - lot.Events)) / spread;
                curve += (Rising.Squares(alpha, lot.Events) + Rising.Squares(beta, lot.Trials - lot.Events)) / (spread * spread);
            }

            if (slope > 0) low = mean;
            else high = mean;
            var next = mean + (slope / curve);
            if (Math.Abs(next - mean) <= 1e-15 * mean) return next > 0 && next < 1 ? next : mean;
            mean = next > low && next < high ? next : low == 0 ? high / 4 : (low + high) / 2;
        }

        return mean;
    }
}
