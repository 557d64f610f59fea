using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Funnels;

/// <summary>How likely a group lies as far from the target as seen.</summary>
public static class FunnelChance
{
    /// <summary>Twice the smaller binomial tail, widened where trials come in clusters.</summary>
    /// <param name="target">The true rate, in (0, 1).</param>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 1 or more.</param>
    /// <param name="designEffect">How many times the clusters raise the variance, finite, 1 or more.</param>
    /// <returns>A probability in [0, 1]: 1 where the count lies in the middle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// p = min(1, 2 min{P(X ≤ x), P(X ≥ x)}), X binomial; with a design effect d the normal score of the tail is divided by √d. Tails below 1e-300 count as that.
    /// Conservative with few events, as exact tails are. Source: Spiegelhalter DJ, Stat Med 2005;24:1185-1202 (exact tails); the widening is ours.
    /// </remarks>
    public static double TwoSided(double target, long events, long trials, double designEffect = 1)
    {
        if (!(target > 0 && target < 1)) throw new ArgumentOutOfRangeException(nameof(target), target, "The target must lie strictly between 0 and 1.");
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        if (events < 0 || events > trials) throw new ArgumentOutOfRangeException(nameof(events), events, "The events must lie between 0 and the trials.");
        Guard.DesignEffect(designEffect);
        var atMost = events == trials ? 1 : Binomial.BetaUpper(events + 1, trials - events, target, 1 - target);
        var atLeast = events == 0 ? 1 : Binomial.BetaLower(events, trials - events + 1, target, 1 - target);
        var tail = Math.Max(Math.Min(atMost, atLeast), 1e-300);
        if (tail >= 0.5) return 1;
        if (designEffect == 1) return 2 * tail;
        var score = Quantile.NormalTail(tail) / Math.Sqrt(designEffect);
        return Math.Min(1, TailProbability.Normal(score));
    }
}
