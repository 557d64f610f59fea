using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Comparison;

/// <summary>
/// The hypergeometric distribution: how many of the events fall into one lot, if the lots are all alike.
/// </summary>
/// <remarks>
/// Tails are sums from the point probability outwards, each term by the exact ratio to the one before, so a far tail keeps
/// its relative precision (below 1e-9 for populations to a thousand million). The point probability is three binomial
/// probabilities in saddle-point form: Loader C, "Fast and accurate computation of binomial probabilities", 2000 (from memory).
/// </remarks>
public static class Hypergeometric
{
    /// <summary>The chance of exactly the observed number.</summary>
    /// <param name="observed">Events among the draws.</param>
    /// <param name="population">All items, 0 or more.</param>
    /// <param name="successesInPopulation">Events among all items, 0 to <paramref name="population"/>.</param>
    /// <param name="draws">Items drawn, 0 to <paramref name="population"/>.</param>
    /// <returns>A probability; 0 for a number that cannot occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double Probability(long observed, long population, long successesInPopulation, long draws)
    {
        Check(population, successesInPopulation, draws);
        var (lowest, highest) = Support(population, successesInPopulation, draws);
        return observed < lowest || observed > highest ? 0 : Point(observed, population, successesInPopulation, draws);
    }

    /// <summary>The chance of at least the observed number.</summary>
    /// <param name="observed">Events among the draws.</param>
    /// <param name="population">All items, 0 or more.</param>
    /// <param name="successesInPopulation">Events among all items, 0 to <paramref name="population"/>.</param>
    /// <param name="draws">Items drawn, 0 to <paramref name="population"/>.</param>
    /// <returns>P(X &gt;= observed), in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double UpperTail(long observed, long population, long successesInPopulation, long draws)
    {
        Check(population, successesInPopulation, draws);
        var (lowest, highest) = Support(population, successesInPopulation, draws);
        if (observed <= lowest) return 1;
        if (observed > highest) return 0;
        var mean = (double)successesInPopulation * draws / population;
        return observed > mean
            ? Math.Min(1, SumUp(observed, highest, population, successesInPopulation, draws))
            : Math.Max(0, 1 - SumDown(observed - 1, lowest, population, successesInPopulation, draws));
    }

    /// <summary>The chance of at most the observed number.</summary>
    /// <param name="observed">Events among the draws.</param>
    /// <param name="population">All items, 0 or more.</param>
    /// <param name="successesInPopulation">Events among all items, 0 to <paramref name="population"/>.</param>
    /// <param name="draws">Items drawn, 0 to <paramref name="population"/>.</param>
    /// <returns>P(X &lt;= observed), in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public static double LowerTail(long observed, long population, long successesInPopulation, long draws)
    {
        Check(population, successesInPopulation, draws);
        var (lowest, highest) = Support(population, successesInPopulation, draws);
        if (observed >= highest) return 1;
        if (observed < lowest) return 0;
        var mean = (double)successesInPopulation * draws / population;
        return observed < mean
            ? Math.Min(1, SumDown(observed, lowest, population, successesInPopulation, draws))
            : Math.Max(0, 1 - SumUp(observed + 1, highest, population, successesInPopulation, draws));
    }

    /// <summary>The logarithm of the chance of exactly the observed number, which must be one that can occur.</summary>
    internal static double LogProbability(long observed, long population, long successes, long draws)
    {
        if (population == 0 || draws == 0 || draws == population) return 0;
        var p = (double)draws / population;
        var q = (double)(population - draws) / population;
        return Binomial.LogProbability(observed, successes, p, q)
            + Binomial.LogProbability(draws - observed, population - successes, p, q)
            - Binomial.LogProbability(draws, population, p, q);
    }

    private static double SumUp(long from, long highest, long population, long successes, long draws)
    {
        double sum = 1;
        double term = 1;
        var failures = population - successes;
        for (var k = from; k < highest; k++)
        {
            term *= (double)(successes - k) / (k + 1) * ((double)(draws - k) / (failures - draws + k + 1));
            sum += term;
            if (term < sum * 1e-18) break;
        }

        return Point(from, population, successes, draws) * sum;
    }

    private static double SumDown(long from, long lowest, long population, long successes, long draws)
    {
        double sum = 1;
        double term = 1;
        var failures = population - successes;
        for (var k = from; k > lowest; k--)
        {
            term *= (double)k / (successes - k + 1) * ((double)(failures - draws + k) / (draws - k + 1));
            sum += term;
            if (term < sum * 1e-18) break;
        }

        return Point(from, population, successes, draws) * sum;
    }

    private static double Point(long observed, long population, long successes, long draws)
    {
        if (population == 0 || draws == 0 || draws == population) return 1;
        var p = (double)draws / population;
        var q = (double)(population - draws) / population;
        return Binomial.Probability(observed, successes, p, q)
            * Binomial.Probability(draws - observed, population - successes, p, q)
            / Binomial.Probability(draws, population, p, q);
    }

    private static (long Lowest, long Highest) Support(long population, long successes, long draws) =>
        (Math.Max(0, draws - (population - successes)), Math.Min(successes, draws));

    private static void Check(long population, long successesInPopulation, long draws)
    {
        Guard.NotNegative(population);
        if (successesInPopulation < 0 || successesInPopulation > population)
            throw new ArgumentOutOfRangeException(nameof(successesInPopulation), successesInPopulation, "The events must lie between 0 and the population.");
        if (draws < 0 || draws > population)
            throw new ArgumentOutOfRangeException(nameof(draws), draws, "The draws must lie between 0 and the population.");
    }
}
