using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Trends.Smooths.Grids;

namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>A rate whose logit wanders from period to period by normal steps, seen through binomial counts.</summary>
public static class BinomialLevel
{
    /// <summary>The smoothed rate of each period, with its band.</summary>
    /// <param name="periods">The counts, in any order; counts of the same period are added. Periods that are not given have no counts: give one with 0 trials to have it smoothed.</param>
    /// <param name="options">Sigma, start and confidence; null for the defaults.</param>
    /// <returns>The smooth; a reason where nothing was counted, where with a diffuse start no event (or nothing else) was seen, or where the counts do not bound sigma.</returns>
    /// <exception cref="ArgumentNullException">No list, or no start.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// logit p' = logit p + normal step of standard deviation sigma (times the root of the number of periods between). The sums forward and backward
    /// over the logit run over a dense lattice, about 4.5 points to the narrowest standard deviation that counts and sigma can leave, each period within
    /// the window where its density is not below 1e-16 of its highest: the relative error of means and limits is below 2e-6, of averages over sigma below 4e-3. Sigma is the most likely one, by the profile over it;
    /// where a constant rate is more likely than any wandering it is 0 and said to be (<see cref="SigmaKind.Zero"/>): the band is then that of one
    /// pooled rate and too short if the rate wanders a little. With <see cref="BinomialLevelOptions.AverageOverSigma"/> each figure is the average over sigma: about ten values of it, by the trapezoidal rule.
    /// Coverage: over 40 weeks of known rates (constant, wandering, a wave, a jump) the 95 % band held 86 to 99 % of weeks at the most likely sigma, 95 to 99 %
    /// averaged over it (tests/reference/studies/smooth-study.csv). Source:
    /// Kitagawa G, J Am Stat Assoc 1987;82:1032-1063 (from memory).
    /// </remarks>
    public static BinomialLevelFit Fit(IReadOnlyList<PeriodCount> periods, BinomialLevelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(periods);
        options ??= new BinomialLevelOptions();
        options.Check();
        PeriodCount[] merged = [.. periods.GroupBy(period => period.Period).OrderBy(group => group.Key).Select(Sum)];
        var data = new LevelData(merged, options.Start);
        var counted = merged.Count(period => period.Trials > 0);
        BinomialLevelFit Without(UndefinedReason reason) => new([], counted, null, SigmaKind.Given, null, null, options.Confidence, reason);
        if (counted == 0) return Without(UndefinedReason.NoTrials);
        if (options.Start.IsDiffuse && data.Events == 0) return Without(UndefinedReason.NoEvents);
        if (options.Start.IsDiffuse && data.Events == data.Trials) return Without(UndefinedReason.OnlyEvents);

        if (options.Sigma is { } given) return At(data, counted, given, SigmaKind.Given, null, options) ?? Without(UndefinedReason.StepsTooSmall);
        if (counted < 2) return Without(UndefinedReason.FewerThanTwoPeriods);
        var profile = new SigmaProfile(data);
        if (profile.IsBeyond) return Without(UndefinedReason.TooManyTerms);
        if (options.AverageOverSigma) return Averaged(data, counted, profile, options);
        if (profile.IsUnbounded) return Without(UndefinedReason.LevelTooUnsteady);
        var kind = profile.MostLikely == 0 ? SigmaKind.Zero : SigmaKind.MostLikely;
        return At(data, counted, profile.MostLikely, kind, profile.Constant, options) ?? Without(UndefinedReason.StepsTooSmall);
    }

    private static PeriodCount Sum(IGrouping<long, PeriodCount> group)
    {
        // In one order, so that sums do not depend on the order given.
        var sorted = group.OrderBy(period => period.Trials).ThenBy(period => period.Events).ToList();
        var trials = sorted.Sum(period => period.Trials);
        return new PeriodCount(group.Key, Math.Min(trials, sorted.Sum(period => period.Events)), trials);
    }

    private static BinomialLevelFit? At(LevelData data, int counted, double sigma, SigmaKind kind, double? constant, BinomialLevelOptions options)
    {
        if (Marginals(data, sigma, LevelGrid.Dense) is not { } marginals) return null;
        var (filtered, smoothed, log) = marginals;
        var tail = (1 - options.Confidence) / 2;
        return new BinomialLevelFit(
            [.. data.Periods.Select((count, t) => new BinomialLevelPoint(count, filtered[t] is { } own ? Estimate(own, tail) : null, Estimate(smoothed[t], tail)))],
            counted, sigma, kind, log, constant, options.Confidence, null);
    }

    private static (LevelMarginal?[] Filtered, LevelMarginal[] Smoothed, double LogLikelihood)? Marginals(LevelData data, double sigma, double points)
    {
        if (sigma == 0)
        {
            var (pooled, log) = ConstantLevel.All(data);
            return (ConstantLevel.Filtered(data), [.. data.Periods.Select(_ => pooled)], log);
        }

        return LevelGrid.Of(data, sigma, points) is { } grid ? (grid.Filtered(), grid.Smoothed(), grid.LogLikelihood) : null;
    }

    private static LevelEstimate Estimate(LevelMarginal marginal, double tail) => new(
        marginal.Mean, Math.Sqrt(marginal.Variance), marginal.Rate, new Interval(LogitScale.Fraction(marginal.Quantile(tail)), LogitScale.Fraction(marginal.Quantile(1 - tail))));

    private static BinomialLevelFit Averaged(LevelData data, int counted, SigmaProfile profile, BinomialLevelOptions options)
    {
        var average = profile.Average(options.SigmaScale);
        var marginals = average.Parts.Select(part => Marginals(data, part.Sigma, LevelGrid.Sparse)!.Value).ToArray();
        var (filtered, smoothed) = (Array.ConvertAll(marginals, part => part.Filtered), Array.ConvertAll(marginals, part => part.Smoothed));
        double[] weights = [.. average.Parts.Select(part => part.Weight)];
        var tail = (1 - options.Confidence) / 2;
        LevelEstimate Mixed(LevelMarginal[] parts)
        {
            double mean = 0, square = 0, rate = 0;
            for (var k = 0; k < parts.Length; k++)
            {
                mean += weights[k] * parts[k].Mean;
                rate += weights[k] * parts[k].Rate;
            }

            for (var k = 0; k < parts.Length; k++) square += weights[k] * (parts[k].Variance + ((parts[k].Mean - mean) * (parts[k].Mean - mean)));
            return new LevelEstimate(mean, Math.Sqrt(square), rate, new Interval(LogitScale.Fraction(Quantile(parts, tail)), LogitScale.Fraction(Quantile(parts, 1 - tail))));
        }

        double Quantile(LevelMarginal[] parts, double chance)
        {
            var places = Array.ConvertAll(parts, part => part.Quantile(chance));
            double Excess(double logit)
            {
                var sum = -chance;
                for (var k = 0; k < parts.Length; k++) sum += weights[k] * parts[k].Below(logit);
                return sum;
            }

            var (low, high) = (places.Min(), places.Max());
            if (Excess(low) >= 0) return low;
            return Excess(high) <= 0 ? high : Root.Between(Excess, low, high);
        }

        return new BinomialLevelFit(
            [.. data.Periods.Select((count, t) => new BinomialLevelPoint(
                count, filtered[0][t] is null ? null : Mixed(Array.ConvertAll(filtered, part => part[t]!)), Mixed(Array.ConvertAll(smoothed, part => part[t]))))],
            counted, average.Sigma, SigmaKind.Averaged, average.LogLikelihood, profile.Constant, options.Confidence, null);
    }
}
