using ScreenStats.Statistics.Planning;

namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>How often the rule in force flags a lot, by how bad the lot is.</summary>
public static class FlagCurve
{
    /// <summary>The chance that a lot is flagged.</summary>
    /// <param name="rule">The rule in force.</param>
    /// <param name="trials">Trials of the lot, 1 or more; with all others at most <see cref="LotPower.LargestPopulation"/>.</param>
    /// <param name="ratio">The lot's true rate as a multiple of the others', 0 or more; times their rate at most 1. At 1 it is the chance of a false flag.</param>
    /// <returns>A probability: the power of <see cref="LotPower"/>, summed over what the other lots may show.</returns>
    /// <exception cref="ArgumentNullException">No rule.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, named.</exception>
    public static double Chance(FlagRule rule, long trials, double ratio)
    {
        CheckRatio(rule, ratio);
        return LotPower.FlagChance(Limits(rule, trials), ratio * rule.Rate, trials);
    }

    /// <summary>The chances at several ratios: what the others may show is gone through once.</summary>
    /// <param name="rule">The rule in force.</param>
    /// <param name="trials">Trials of the lot, as in <see cref="Chance"/>.</param>
    /// <param name="ratios">The lot's true rate as multiples of the others', each as in <see cref="Chance"/>.</param>
    /// <returns>One probability for each ratio, in their order, equal to <see cref="Chance"/>.</returns>
    /// <exception cref="ArgumentNullException">No rule or no list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, named.</exception>
    public static IReadOnlyList<double> Chances(FlagRule rule, long trials, IReadOnlyList<double> ratios)
    {
        ArgumentNullException.ThrowIfNull(ratios);
        foreach (var ratio in ratios) CheckRatio(rule, ratio);
        var limits = Limits(rule, trials);
        return [.. ratios.Select(ratio => LotPower.FlagChance(limits, ratio * rule.Rate, trials))];
    }

    /// <summary>How bad a lot must be to be flagged with a given chance.</summary>
    /// <param name="rule">The rule in force.</param>
    /// <param name="trials">Trials of the lot, as in <see cref="Chance"/>.</param>
    /// <param name="chance">The chance of a flag, in (0, 1).</param>
    /// <returns>The ratio of its rate to the others', relative error below 1e-6; null where even a lot with nothing but events is flagged less often.</returns>
    /// <exception cref="ArgumentNullException">No rule.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, named.</exception>
    /// <remarks>The chance rises with the ratio, so bisection on its logarithm finds the one place.</remarks>
    public static double? Ratio(FlagRule rule, long trials, double chance)
    {
        ArgumentNullException.ThrowIfNull(rule);
        if (!(chance is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(chance), chance, "The chance of a flag lies strictly between 0 and 1.");
        var limits = Limits(rule, trials);
        double At(double logRate) => LotPower.FlagChance(limits, Math.Min(1, Math.Exp(logRate)), trials);
        if (At(0) < chance) return null;
        double low = -1, high = 0;
        while (At(low) >= chance) (low, high) = (2 * low, low);
        while (high - low > 1e-7)
        {
            var middle = (low + high) / 2;
            if (At(middle) >= chance) high = middle;
            else low = middle;
        }

        return Math.Exp(high) / rule.Rate;
    }

    private static List<(double Chance, long Needed)> Limits(FlagRule rule, long trials)
    {
        ArgumentNullException.ThrowIfNull(rule);
        rule.Check();
        if (trials < 1 || trials > LotPower.LargestPopulation || rule.OtherTrials > LotPower.LargestPopulation - trials)
            throw new ArgumentOutOfRangeException(nameof(trials), trials, "The trials of the lot must be at least 1, and those of all lots together at most ten million.");
        return LotPower.FlagLimits(rule.Rate, trials, rule.OtherTrials, rule.Lots, rule.Threshold);
    }

    private static void CheckRatio(FlagRule rule, double ratio)
    {
        ArgumentNullException.ThrowIfNull(rule);
        rule.Check();
        if (!(ratio >= 0) || !(ratio * rule.Rate <= 1)) throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "The ratio is 0 or more, and times the rate of the others at most 1.");
    }
}
