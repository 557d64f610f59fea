using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Shrinkage;

/// <summary>Ratios of observed to expected events, drawn together as far as a group's own events are few.</summary>
public static class GammaPoisson
{
    // Logarithms of the spread 1 / shape: from groups all but alike to groups of which one has nearly everything.
    private const int Least = -25;
    private const int Most = 10;

    /// <summary>The most likely gamma distribution of the true ratios.</summary>
    /// <param name="groups">The groups, in any order; those of which no event is expected are left out.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// O is Poisson with mean θ E, θ gamma with shape a and rate b: O is negative binomial. For a given spread 1 / a the slope over the mean has one root; over
    /// the spread the slope of the profile is searched for all its roots on a lattice of its logarithm. Where no spread is more likely than none the
    /// groups are all alike. Source: Clayton D, Kaldor J, Biometrics 1987;43:671-681 (from memory).
    /// </remarks>
    public static GammaPoissonFit MaximumLikelihood(IReadOnlyList<ObservedExpected> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ObservedExpected[] used = [.. groups.Where(group => group.Expected > 0).OrderBy(group => group.Expected).ThenBy(group => group.Observed)];
        var (observed, expected) = (used.Sum(group => group.Observed), used.Sum(group => group.Expected));
        GammaPoissonFit Without(UndefinedReason reason, double? mean = null, double? log = null) => new(used.Length, observed, expected, null, null, mean, log, reason);
        if (ObservedExpected.ReasonOf(used, groups) is { } reason) return Without(reason);

        var mean = observed / expected;
        var alike = LogLikelihood(used, 0, mean);
        (double Spread, double Mean, double Log)? best = null;
        double Slope(double logSpread) => SpreadSlope(used, Math.Exp(logSpread), mean = MeanAt(used, Math.Exp(logSpread), mean));
        var before = Slope(Least);
        for (var step = Least + 1; step <= Most; step++)
        {
            var slope = Slope(step);
            if (before > 0 && slope <= 0)
            {
                var spread = Math.Exp(Root.Between(Slope, step - 1, step));
                mean = MeanAt(used, spread, mean);
                var log = LogLikelihood(used, spread, mean);
                if (best is not { } b || log > b.Log) best = (spread, mean, log);
            }

            before = slope;
        }

        if (best is not { } found || !(found.Log > alike + (1e-11 * Math.Abs(alike)))) return Without(UndefinedReason.GroupsAllAlike, observed / expected, alike);
        return new GammaPoissonFit(used.Length, observed, expected, 1 / found.Spread, 1 / (found.Spread * found.Mean), found.Mean, found.Log, null);
    }

    /// <summary>The ratio of each group under a fit.</summary>
    /// <param name="groups">The groups, in any order.</param>
    /// <param name="fit">The spread of their true ratios.</param>
    /// <param name="confidence">The probability of the interval, in (0, 1).</param>
    /// <returns>
    /// For each group, in the order given, the mean (a + O) / (b + E) of its gamma posterior with the equal-tailed interval; undefined with the reason of the
    /// fit. A group of which nothing is expected has the spread of all.
    /// </returns>
    /// <exception cref="ArgumentNullException">No list or no fit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>Shape and rate are taken as known, which makes the intervals a little too narrow with few groups.</remarks>
    public static IReadOnlyList<Estimate> Ratios(IReadOnlyList<ObservedExpected> groups, GammaPoissonFit fit, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(fit);
        Guard.Confidence(confidence);
        var tail = (1 - confidence) / 2;
        return [.. groups.Select(group =>
        {
            if (fit.Shape is not { } a || fit.Rate is not { } b) return Estimate.Undefined(fit.Reason ?? UndefinedReason.NotConverged);
            var (shape, rate) = (a + group.Observed, b + group.Expected);
            var limits = new Interval(GammaTail.Quantile(shape, tail, upperTail: false) / rate, GammaTail.Quantile(shape, tail, upperTail: true) / rate);
            return Estimate.Of(shape / rate, limits.Including(shape / rate), "empirical Bayes, gamma-Poisson", confidence);
        })];
    }

    private static double LogLikelihood(ObservedExpected[] groups, double spread, double mean) => groups.Sum(group =>
    {
        double o = group.Observed, m = mean * group.Expected;
        var counts = (o == 0 ? 0 : o * Math.Log(m)) - GammaLogarithm.Of(o + 1);
        if (spread == 0) return counts - m;
        var x = spread * m;
        return counts + Rising.Logarithms(1 / spread, group.Observed) + (o * Math.Log(spread)) - (o * Precise.LogOnePlus(x)) - (Precise.LogOnePlus(x) / spread);
    });

    /// <summary>The slope of the logarithm of the likelihood over the spread.</summary>
    private static double SpreadSlope(ObservedExpected[] groups, double spread, double mean) => groups.Sum(group =>
    {
        double m = mean * group.Expected, x = spread * m;

        // ln(1 + x) - x / (1 + x) over the spread squared, whose difference loses its digits where x is small.
        double bend;
        if (x > 0.02)
        {
            bend = (Precise.LogOnePlus(x) - (x / (1 + x))) / (spread * spread);
        }
        else
        {
            double sum = 0, power = 1;
            for (var k = 2; k < 14; k++)
            {
                sum += power * (k - 1.0) / k;
                power *= -x;
            }

            bend = sum * m * m;
        }

        return (Rising.Shares(1 / spread, group.Observed) / spread) + bend - (group.Observed * m / (1 + x));
    });

    /// <summary>The most likely mean at a spread: the root of Σ (O - m E) / (1 + spread m E), which falls in m; Newton's steps kept in a bracket.</summary>
    private static double MeanAt(ObservedExpected[] groups, double spread, double start)
    {
        var (low, high, mean) = (0.0, double.PositiveInfinity, start);
        for (var step = 0; step < 200; step++)
        {
            double slope = 0, curve = 0;
            foreach (var group in groups)
            {
                var over = 1 + (spread * mean * group.Expected);
                slope += (group.Observed - (mean * group.Expected)) / over;
                curve += group.Expected * (1 + (spread * group.Observed)) / (over * over);
            }

            if (slope > 0) low = mean;
            else high = mean;
            var next = mean + (slope / curve);
            if (Math.Abs(next - mean) <= 1e-15 * mean) return next > 0 ? next : mean;
            mean = next > low && next < high ? next : double.IsInfinity(high) ? 2 * mean : (low + high) / 2;
        }

        return mean;
    }
}
