using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Comparison.Paired;

/// <summary>The difference of two proportions measured on the same people.</summary>
public static class PairedDifference
{
    /// <summary>Newcombe's score interval for pairs.</summary>
    /// <param name="both">Pairs in which both readings are positive.</param>
    /// <param name="firstOnly">Pairs in which only the first is.</param>
    /// <param name="secondOnly">Pairs in which only the second is.</param>
    /// <param name="neither">Pairs in which neither is.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>First minus second proportion with its limits in [-1, 1]; undefined without pairs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or a confidence outside (0, 1).</exception>
    /// <remarks>See <see cref="Newcombe(PairedCounts, double)"/>.</remarks>
    public static ContrastEstimate Newcombe(long both, long firstOnly, long secondOnly, long neither, double confidence = 0.95) =>
        Newcombe(new PairedCounts(both, firstOnly, secondOnly, neither), confidence);

    /// <summary>Newcombe's score interval for pairs.</summary>
    /// <param name="counts">The four counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>First minus second proportion with its limits in [-1, 1]; undefined without pairs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// Square-and-add of both Wilson intervals, less 2 phi times the product of their parts. Phi is the correlation of the readings,
    /// (a d - b c) / sqrt(product of the four margins), with a d - b c lowered by half the pairs where it is above that, and 0 where it is
    /// between 0 and that; 0 where a margin is empty. Covers the nominal share on average. Source: Newcombe RG, Stat Med
    /// 1998;17:2635-2650, method 10.
    /// </remarks>
    public static ContrastEstimate Newcombe(PairedCounts counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        double n = counts.Pairs;
        if (n == 0)
        {
            return new ContrastEstimate(
                ContrastMeasure.Difference, ContrastMethod.NewcombePaired, confidence, UndefinedReason.NoTrials, UndefinedReason.NoTrials, UndefinedReason.NoTrials);
        }

        var z = Quantile.Normal(confidence);
        var (first, second) = (counts.FirstPositive / n, counts.SecondPositive / n);
        var firstLimits = ScoreInterval.Wilson(counts.FirstPositive, n, z).Including(first);
        var secondLimits = ScoreInterval.Wilson(counts.SecondPositive, n, z).Including(second);
        var phi = Correlation(counts);
        var difference = (counts.FirstOnly - counts.SecondOnly) / n;
        var interval = new Interval(
            difference - Length(first - firstLimits.Lower, secondLimits.Upper - second, phi),
            difference + Length(firstLimits.Upper - first, second - secondLimits.Lower, phi)).Clip(-1, 1).Including(difference);
        return new ContrastEstimate(ContrastMeasure.Difference, ContrastMethod.NewcombePaired, confidence, difference, interval.Lower, interval.Upper);
    }

    private static double Correlation(PairedCounts counts)
    {
        if (counts.FirstPositive == 0 || counts.SecondPositive == 0 || counts.FirstNegative == 0 || counts.SecondNegative == 0) return 0;
        var determinant = (double)(((Int128)counts.Both * counts.Neither) - ((Int128)counts.FirstOnly * counts.SecondOnly));
        var half = counts.Pairs / 2.0;
        var corrected = determinant > half ? determinant - half : Math.Min(0, determinant);
        return corrected / Math.Sqrt((double)counts.FirstPositive * counts.FirstNegative) / Math.Sqrt((double)counts.SecondPositive * counts.SecondNegative);
    }

    // a² - 2 phi a b + b², written so that it cannot become negative where phi is 1.
    private static double Length(double a, double b, double phi) => Math.Sqrt(((a - b) * (a - b)) + (2 * (1 - phi) * a * b));
}
