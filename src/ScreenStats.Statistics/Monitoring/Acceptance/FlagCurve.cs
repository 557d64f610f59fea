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
        ArgumentNullException.ThrowIfNull(rule);
        rule.Check();
        if (trials < 1 || trials > LotPower.LargestPopulation || rule.OtherTrials > LotPower.LargestPopulation - trials)
            throw new ArgumentOutOfRangeException(nameof(trials), trials, "The trials of the lot must be at least 1, and those of all lots together at most ten million.");
        if (!(ratio >= 0) || !(ratio * rule.Rate <= 1)) throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "The ratio is 0 or more, and times the rate of the others at most 1.");
        return LotPower.FlagChance(rule.Rate, ratio * rule.Rate, trials, rule.OtherTrials, rule.Lots, rule.Threshold);
    }
}
