using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Sojourn;

/// <summary>Confirmatory tests of pooled specimens: a negative pool clears all of it, a positive one is taken apart.</summary>
/// <remarks>
/// <para>Tests per person, relative to one each: 1/n + 1 - (1 - p)^n for pools of n, p the share with the condition. It takes people of a pool
/// to be independent (people of one outbreak are not: then pools do better than this) and a pooled test to be as good as a single one (dilution
/// makes it less sensitive: validate it). The best size is near 1/sqrt(p), at a cost near 2 sqrt(p); from p = 1 - 3^(-1/3) = 0.3066 on no pool
/// saves tests.</para>
/// <para>Source: Dorfman R, Ann Math Stat 1943;14:436-440 (from memory).</para>
/// </remarks>
public static class PooledTesting
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "two-stage-pools";

    /// <summary>The largest pool that is looked at.</summary>
    public const long LargestPool = 1_000_000_000;

    /// <summary>Tests per person.</summary>
    /// <param name="poolSize">People in a pool, from 1 to <see cref="LargestPool"/>.</param>
    /// <param name="prevalence">The share with the condition among those pooled, in [0, 1].</param>
    /// <returns>1/n + 1 - (1 - p)^n; 1 for pools of one, which are not tested twice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double RelativeCost(long poolSize, double prevalence)
    {
        if (poolSize is < 1 or > LargestPool) throw new ArgumentOutOfRangeException(nameof(poolSize), poolSize, "A pool has from 1 person to a billion.");
        Guard.Probability(prevalence);
        if (poolSize == 1) return 1;
        var retested = prevalence == 1 ? 1 : -Precise.ExponentialMinusOne(poolSize * Precise.LogOnePlus(-prevalence));
        return (1.0 / poolSize) + retested;
    }

    /// <summary>The pool size with the fewest tests; the smaller of two that do equally well.</summary>
    /// <param name="prevalence">The share with the condition among those pooled, in [0, 1].</param>
    /// <returns>
    /// A whole number; undefined where no pool saves tests, where nobody has the condition (the larger the better), and beyond
    /// <see cref="LargestPool"/>.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The prevalence is outside [0, 1].</exception>
    /// <remarks>
    /// One more person in a pool of n saves tests while p n (n + 1)(1 - p)^n is below 1; the left side rises as far as n near 2/p, so the first n
    /// at which it is 1 or more is the best, found by halving.
    /// </remarks>
    public static Estimate BestSize(double prevalence)
    {
        Guard.Probability(prevalence);
        if (prevalence == 0) return Estimate.Undefined(UndefinedReason.NobodyInfected);
        if (prevalence > 0.31) return Estimate.Undefined(UndefinedReason.NoPoolPays);
        var each = Precise.LogOnePlus(-prevalence);
        bool Enough(long size) => Math.Log(prevalence) + Math.Log(size) + Math.Log(size + 1.0) + (size * each) >= -1e-14;

        // At 1.5/sqrt(p) + 2 the left side is above 1 for every p up to 0.31 at which it ever is.
        var high = (long)Math.Min(Math.Ceiling(1.5 / Math.Sqrt(prevalence)) + 2, 4.0 * LargestPool);
        if (high <= LargestPool * 2 && !Enough(high)) return Estimate.Undefined(UndefinedReason.NoPoolPays);
        var low = 1L;
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (Enough(middle)) high = middle;
            else low = middle;
        }

        if (high > LargestPool) return Estimate.Undefined(UndefinedReason.TooLarge);
        return RelativeCost(high, prevalence) < 1 ? Estimate.Point(high, Method) : Estimate.Undefined(UndefinedReason.NoPoolPays);
    }
}
