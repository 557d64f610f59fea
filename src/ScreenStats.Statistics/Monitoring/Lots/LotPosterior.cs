using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>What is known of one lot's rate once it is read as one of the program's lots.</summary>
public sealed record LotPosterior
{
    internal LotPosterior(LotTally lot, BetaDistribution? distribution, Estimate rate, double? threshold, double? chanceAbove)
    {
        Lot = lot;
        Distribution = distribution;
        Rate = rate;
        Threshold = threshold;
        ChanceAbove = chanceAbove;
    }

    /// <summary>The lot's counts.</summary>
    public LotTally Lot { get; }

    /// <summary>The posterior distribution of its rate; null with a reason in <see cref="Rate"/>.</summary>
    public BetaDistribution? Distribution { get; }

    /// <summary>The posterior mean with the equal-tailed interval; undefined, with the reason, where the spread of the lots is.</summary>
    public Estimate Rate { get; }

    /// <summary>The rate above which the lot is too high: the factor times the program's rate; null with a reason in <see cref="Rate"/>.</summary>
    public double? Threshold { get; }

    /// <summary>The probability that the lot's rate lies above <see cref="Threshold"/>; null with a reason in <see cref="Rate"/>.</summary>
    public double? ChanceAbove { get; }
}
