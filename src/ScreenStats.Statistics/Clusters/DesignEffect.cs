using System.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>The design effect of clustered yes-or-no counts.</summary>
public static class DesignEffect
{
    /// <summary>Rao and Scott's design effect, from sums over the clusters.</summary>
    /// <param name="sums">Sums over the clusters.</param>
    /// <returns>The design effect; 1 with a reason where it is undefined.</returns>
    /// <remarks>
    /// With m clusters, N trials and p = X/N: v = m / ((m - 1) N²) Σ(x - n p)², d = N v / (p (1 - p)). The sum of squares is taken in
    /// whole numbers, N² Σx² - 2 N X Σnx + X² Σn², so nothing cancels. Undefined with fewer than two clusters, and where no
    /// trial or every trial is an event. Few clusters make it uncertain: see <see cref="WidenedInterval"/>.
    /// Source: Rao JNK, Scott AJ, Biometrics 1992;48:577-585.
    /// </remarks>
    public static DesignEffectEstimate Of(ClusterSums sums)
    {
        if (sums.Trials == 0) return new DesignEffectEstimate(sums, null, UndefinedReason.NoTrials);
        if (sums.Clusters < 2) return new DesignEffectEstimate(sums, null, UndefinedReason.FewerThanTwoClusters);
        if (sums.Events == 0) return new DesignEffectEstimate(sums, null, UndefinedReason.NoEvents);
        if (sums.Events == sums.Trials) return new DesignEffectEstimate(sums, null, UndefinedReason.OnlyEvents);
        BigInteger trials = sums.Trials;
        BigInteger events = sums.Events;
        var squares = (trials * trials * (BigInteger)sums.EventsSquared)
            - (2 * trials * events * (BigInteger)sums.TrialsTimesEvents)
            + (events * events * (BigInteger)sums.TrialsSquared);
        if (squares.Sign < 0)
            throw new ArgumentOutOfRangeException(nameof(sums), "The sums contradict each other: no clusters can have them.");
        var denominator = trials * events * (trials - events);
        var ratio = Math.Exp(BigInteger.Log(squares) - BigInteger.Log(denominator));
        return new DesignEffectEstimate(sums, squares.IsZero ? 0 : ratio * sums.Clusters / (sums.Clusters - 1), null);
    }

    /// <summary>The largest of several design effects: the one an interval is widened by.</summary>
    /// <param name="first">One.</param>
    /// <param name="others">The others.</param>
    /// <returns>That with the largest value; of equal ones a defined one first, then the one with fewer clusters.</returns>
    public static DesignEffectEstimate Largest(DesignEffectEstimate first, params IEnumerable<DesignEffectEstimate> others)
    {
        var largest = first;
        foreach (var other in others)
        {
            if (Rank(other).CompareTo(Rank(largest)) > 0) largest = other;
        }

        return largest;
    }

    private static (double Value, bool Defined, long Clusters) Rank(DesignEffectEstimate effect) =>
        (effect.Value, effect.Reason is null, -effect.Clusters);
}
