using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Funnels;

/// <summary>Exact limits around a target rate.</summary>
public static class FunnelLimits
{
    /// <summary>How the exact limits are interpolated, for the reader of the picture.</summary>
    public const string Interpolation =
        "exact binomial limits, interpolated between the two counts whose cumulative probabilities enclose the level (Spiegelhalter 2005, appendix A.1.1)";

    /// <summary>The rate below which a group of this size falls with the given probability.</summary>
    /// <param name="target">The true rate, in (0, 1).</param>
    /// <param name="trials">Trials, 1 or more.</param>
    /// <param name="probability">The probability, in (0, 1); for limits of confidence 0.95 take 0.025 and 0.975.</param>
    /// <returns>The limit as a rate; it may lie below 0, where no group of this size can be below it. Clip it for a picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// r = min{r: F(r) ≥ p}, α = (F(r) - p) / (F(r) - F(r - 1)), limit (r - α) / n, with F the binomial distribution function. Interpolations differ in
    /// the chance they leave outside; this one keeps the picture smooth. An upper limit may lie below the target, too: where 97.5 % of groups of a size have no event, one event is outside. Source: Spiegelhalter DJ, Stat Med 2005;24:1185-1202, appendix A.1.1 (from
    /// memory).
    /// </remarks>
    public static double Exact(double target, long trials, double probability)
    {
        if (!(target > 0 && target < 1)) throw new ArgumentOutOfRangeException(nameof(target), target, "The target must lie strictly between 0 and 1.");
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        Guard.Confidence(probability);
        var upper = probability > 0.5;
        var tail = upper ? 1 - probability : probability;

        // The smallest count whose distribution function reaches the probability, by halving; far tails are compared in the tail itself.
        bool Reaches(long r) => upper ? Above(r, trials, target) <= tail : Below(r, trials, target) >= tail;
        long low = -1, high = trials;
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (Reaches(middle)) high = middle;
            else low = middle;
        }

        var excess = upper ? tail - Above(high, trials, target) : Below(high, trials, target) - tail;
        var step = Binomial.Probability(high, trials, target, 1 - target);
        var alpha = step > 0 ? Math.Clamp(excess / step, 0, 1) : 0;
        return (high - alpha) / trials;
    }

    /// <summary>Where a group lies against the exact limits, from the two tails at its own count: the same as against <see cref="Exact"/>, without its search.</summary>
    internal static FunnelStanding Standing(double target, GroupCount group, double confidence, double designEffect)
    {
        // The count drawn in to what it would be without the design effect; between counts the distribution function is a straight line, as in the limits.
        var middle = group.Trials * target;
        var place = designEffect == 1 ? group.Events : middle + ((group.Events - middle) / Math.Sqrt(designEffect));
        var count = (long)Math.Ceiling(place);
        var part = (count - place) * Binomial.Probability(count, group.Trials, target, 1 - target);

        // What equals a limit but for rounding is not outside it.
        var tail = (1 - confidence) / 2 * (1 - 1e-11);
        return place > middle
            ? Above(count, group.Trials, target) + part < tail ? FunnelStanding.Above : FunnelStanding.Within
            : Below(count, group.Trials, target) - part < tail ? FunnelStanding.Below : FunnelStanding.Within;
    }

    private static double Below(long r, long n, double p) => r >= n ? 1 : Binomial.BetaUpper(r + 1, n - r, p, 1 - p);

    private static double Above(long r, long n, double p) => r >= n ? 0 : Binomial.BetaLower(r + 1, n - r, p, 1 - p);
}
