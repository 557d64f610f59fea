using ScreenStats.Statistics.Monitoring.Sequential.CountSums;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.RiskAdjusted;

/// <summary>What an observation adds to a sum of log-likelihood ratios.</summary>
public readonly record struct LikelihoodWeights
{
    private LikelihoodWeights(double eventWeight, double nonEventWeight)
    {
        Event = eventWeight;
        NonEvent = nonEventWeight;
    }

    /// <summary>Added by an event.</summary>
    public double Event { get; }

    /// <summary>Added by an observation without event.</summary>
    public double NonEvent { get; }

    /// <summary>The weights between two rates.</summary>
    /// <param name="rateInOrder">The rate p0 that is in order, in (0, 1).</param>
    /// <param name="rateToFind">The rate p1 to be found, above p0 and below 1.</param>
    /// <returns>ln(p1 / p0) and ln((1 - p1) / (1 - p0)).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rate outside its domain.</exception>
    public static LikelihoodWeights OfRates(double rateInOrder, double rateToFind)
    {
        BernoulliCumulativeSum.Check(rateInOrder, rateToFind);
        return new LikelihoodWeights(Math.Log(rateToFind / rateInOrder), Precise.LogOnePlus((rateInOrder - rateToFind) / (1 - rateInOrder)));
    }

    /// <summary>The weights of an observation with an expected rate of its own, between two odds ratios.</summary>
    /// <param name="expected">The rate p that is expected of the observation, in [0, 1].</param>
    /// <param name="oddsRatioToFind">The odds ratio R1 to be found, above 0; below R0 to watch for a fall.</param>
    /// <param name="oddsRatioInOrder">The odds ratio R0 that is in order, above 0; 1 unless given.</param>
    /// <returns>ln((1 - p + R0 p) R1 / ((1 - p + R1 p) R0)) and ln((1 - p + R0 p) / (1 - p + R1 p)).</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its domain, or two equal odds ratios.</exception>
    /// <remarks>Source: Steiner SH, Cook RJ, Farewell VT, Treasure T, Biostatistics 2000;1:441-452, equation 2.2 (secondary).</remarks>
    public static LikelihoodWeights Adjusted(double expected, double oddsRatioToFind, double oddsRatioInOrder = 1)
    {
        Guard.Probability(expected);
        if (!(oddsRatioInOrder > 0) || !double.IsFinite(oddsRatioInOrder))
            throw new ArgumentOutOfRangeException(nameof(oddsRatioInOrder), oddsRatioInOrder, "An odds ratio is a finite number above 0.");
        if (!(oddsRatioToFind > 0) || !double.IsFinite(oddsRatioToFind) || oddsRatioToFind == oddsRatioInOrder)
            throw new ArgumentOutOfRangeException(nameof(oddsRatioToFind), oddsRatioToFind, "The odds ratio to be found is a finite number above 0, other than the one in order.");
        var without = Precise.LogOnePlus((oddsRatioInOrder - 1) * expected) - Precise.LogOnePlus((oddsRatioToFind - 1) * expected);
        return new LikelihoodWeights(without + Math.Log(oddsRatioToFind / oddsRatioInOrder), without);
    }
}
