using ScreenStats.Statistics.Monitoring.Charts;

namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>How long a chart runs, on average, until one of its run rules fires: its false alarms when nothing is wrong, its delay when something is.</summary>
/// <remarks>
/// Exact for independent points and a known centre: the mean time to absorption of the Markov chain whose states are the past points a rule
/// still needs. All points carry the same number of trials. With an estimated centre false alarms come more often, or more seldom, than it says.
/// Source: Champ CW, Woodall WH, Technometrics 1987;29:393-399.
/// </remarks>
public static class RunRuleLength
{
    /// <summary>The average run length for normal points with limits at three standard errors.</summary>
    /// <param name="rules">The rules in force, at least one.</param>
    /// <param name="shift">How many standard errors the true mean lies off the centre; finite.</param>
    /// <returns>The mean number of points up to and with the one that signals, at least 1; undefined beyond what a number can hold.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rule is not known, or the shift is not finite.</exception>
    /// <exception cref="ArgumentException">No rule is given.</exception>
    public static Estimate Normal(IEnumerable<RunRule> rules, double shift = 0)
    {
        Guard.Finite(shift);
        return Of(rules, ZoneChances.Normal(shift), "average run length of the run rules, normal points");
    }

    /// <summary>The average run length for a chart of proportions with exact limits.</summary>
    /// <param name="rules">The rules in force, at least one.</param>
    /// <param name="trials">The trials of each point, 1 or more.</param>
    /// <param name="centre">The proportion the chart stands around, in (0, 1).</param>
    /// <param name="rate">The true proportion, in [0, 1].</param>
    /// <param name="tailProbability">The greatest chance of a point outside on either side, in (0, 0.5).</param>
    /// <returns>The mean number of points up to and with the one that signals; undefined where no rule can ever fire.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its domain or a rule not known.</exception>
    /// <exception cref="ArgumentException">No rule is given.</exception>
    public static Estimate Proportion(IEnumerable<RunRule> rules, long trials, double centre, double rate, double tailProbability = 0.00135)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        Guard.Probability(rate);
        ChartBuilder.Tail(tailProbability);
        if (!(centre > 0 && centre < 1)) throw new ArgumentOutOfRangeException(nameof(centre), centre, "The centre must lie strictly between 0 and 1.");
        return Of(rules, ZoneChances.Binomial(trials, centre, rate, tailProbability), "average run length of the run rules, binomial points");
    }

    private static Estimate Of(IEnumerable<RunRule> rules, ZoneChances chances, string method)
    {
        var looked = ChartBuilder.Rules(rules);
        if (looked.Length == 0) throw new ArgumentException("At least one rule must be in force.", nameof(rules));
        return new RunRuleChain(looked).MeanLength(chances) is { } mean ? Estimate.Point(mean, method) : Estimate.Undefined(UndefinedReason.NeverSignals);
    }
}
