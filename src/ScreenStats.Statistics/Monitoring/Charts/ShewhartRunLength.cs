namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>How long a chart of proportions runs, on average, until a point lies outside its limits.</summary>
public static class ShewhartRunLength
{
    /// <summary>The average run length with equal numbers of trials and a known centre.</summary>
    /// <param name="trials">The trials of each point, 1 or more.</param>
    /// <param name="centre">The proportion the chart stands around, in (0, 1).</param>
    /// <param name="rate">The true proportion, in [0, 1].</param>
    /// <param name="limits"><see cref="ChartLimits.Probability"/> or <see cref="ChartLimits.ThreeSigma"/>.</param>
    /// <param name="upperOnly">Whether only points above the upper limit count.</param>
    /// <param name="tailProbability">For probability limits: the greatest chance of a point outside on either side, in (0, 0.5).</param>
    /// <returns>1 / P(outside), at least 1; undefined where no point can lie outside.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its domain, or the limits are of another kind.</exception>
    /// <remarks>Exact, by the binomial distribution. At <paramref name="rate"/> = <paramref name="centre"/> it is the number of points between false alarms.</remarks>
    public static Estimate Proportion(long trials, double centre, double rate, ChartLimits limits = ChartLimits.Probability, bool upperOnly = false, double tailProbability = ChartBuilder.UsualTail)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        Guard.Probability(rate);
        ChartBuilder.Tail(tailProbability);
        if (!(centre > 0 && centre < 1)) throw new ArgumentOutOfRangeException(nameof(centre), centre, "The centre must lie strictly between 0 and 1.");
        var (fewest, most) = limits switch
        {
            ChartLimits.Probability => CountLimits.BinomialInside(trials, centre, tailProbability),
            ChartLimits.ThreeSigma => ThreeSigma(trials, centre),
            _ => throw new ArgumentOutOfRangeException(nameof(limits), limits, "Run lengths are known for probability and three-sigma limits."),
        };
        var outside = CountLimits.BinomialOrMore(most + 1, trials, rate) + (upperOnly ? 0 : CountLimits.BinomialOrLess(fewest - 1, trials, rate));
        var length = 1 / outside;
        return double.IsFinite(length) ? Estimate.Point(length, "average run length, binomial points") : Estimate.Undefined(UndefinedReason.NeverSignals);
    }

    private static (long Fewest, long Most) ThreeSigma(long trials, double centre)
    {
        var (mean, width) = (trials * centre, 3 * Math.Sqrt(trials * centre * (1 - centre)));
        return ((long)Math.Ceiling(Math.Max(0, mean - width)), (long)Math.Floor(Math.Min(trials, mean + width)));
    }
}
