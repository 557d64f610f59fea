using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Ranks;

/// <summary>The ranks of groups with their uncertainty: the order of estimates alone says more than is known.</summary>
/// <remarks>
/// All groups are drawn together, each from what is known of it, and ranked; the share of the draws is the probability. Draws of a group depend on the seed, the
/// draw and its place in the list alone. Source: Goldstein H, Spiegelhalter DJ, J R Stat Soc A 1996;159:385-443 (from memory).
/// </remarks>
public static class Ranking
{
    private const int MostGroups = 2000;

    /// <summary>Ranks of rates known by beta distributions, for instance of <see cref="Monitoring.Lots.EmpiricalBayes"/>.</summary>
    /// <param name="rates">What is known of each rate, 1 to 2,000 of them.</param>
    /// <param name="options">How ranks are drawn; null for the defaults.</param>
    /// <returns>One for each rate, in the order given.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain, no rate, or more than 2,000.</exception>
    public static IReadOnlyList<RankEstimate> OfRates(IReadOnlyList<BetaDistribution> rates, RankOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(rates);
        return Of(rates.Count, options ?? new RankOptions(), (index, random) => random.LogGamma(rates[index].Alpha) - random.LogGamma(rates[index].Beta));
    }

    /// <summary>Ranks of effects known by a mean and a standard deviation, for instance of <see cref="Intercepts.RandomInterceptLogistic"/>.</summary>
    /// <param name="effects">Mean and standard deviation (0 or more) of each effect, finite, 1 to 2,000 of them.</param>
    /// <param name="options">How ranks are drawn; null for the defaults.</param>
    /// <returns>One for each effect, in the order given; the largest effect has rank 1.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option or figure outside its domain, no effect, or more than 2,000.</exception>
    public static IReadOnlyList<RankEstimate> OfEffects(IReadOnlyList<(double Mean, double StandardDeviation)> effects, RankOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(effects);
        foreach (var (mean, deviation) in effects)
        {
            Guard.Finite(mean, nameof(effects));
            if (!(deviation >= 0) || !double.IsFinite(deviation)) throw new ArgumentOutOfRangeException(nameof(effects), deviation, "A standard deviation must be a finite number, 0 or more.");
        }

        return Of(effects.Count, options ?? new RankOptions(), (index, random) => effects[index].Mean + (effects[index].StandardDeviation * random.Normal()));
    }

    private static RankEstimate[] Of(int count, RankOptions options, Func<int, RandomDraw, double> draw)
    {
        options.Check();
        if (count is < 1 or > MostGroups) throw new ArgumentOutOfRangeException(nameof(count), count, "There must be 1 to 2,000 groups to rank.");
        var seen = new int[count, count];
        var values = new double[count];
        var order = new int[count];
        for (var replicate = 0; replicate < options.Replicates; replicate++)
        {
            var random = new RandomDraw(new ReplicateStream(options.Seed, replicate));
            for (var i = 0; i < count; i++) (values[i], order[i]) = (-draw(i, random), i);
            Array.Sort(values, order);
            for (var rank = 0; rank < count; rank++) seen[order[rank], rank]++;
        }

        double replicates = options.Replicates;
        var tail = (1 - options.Confidence) / 2 * replicates;
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            double sum = 0, below = 0;
            int lowest = 0, highest = 0;
            for (var rank = 0; rank < count; rank++)
            {
                sum += (rank + 1.0) * seen[i, rank];
                below += seen[i, rank];
                if (lowest == 0 && below > tail) lowest = rank + 1;
                if (highest == 0 && below >= replicates - tail) highest = rank + 1;
            }

            var chance = seen[i, 0] / replicates;
            return new RankEstimate(i, sum / replicates, lowest, highest, chance, Math.Sqrt(chance * (1 - chance) / replicates), options.Confidence);
        })];
    }
}
