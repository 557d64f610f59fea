namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>How much better one rate inside a window and another outside explain the events than one rate for all.</summary>
public static class LikelihoodRatioScore
{
    /// <summary>The logarithm of the ratio of likelihoods.</summary>
    /// <param name="inside">Events in the window, 0 to <paramref name="trialsInside"/>.</param>
    /// <param name="trialsInside">Trials in the window, 0 to <paramref name="trials"/>.</param>
    /// <param name="events">Events in all, at least <paramref name="inside"/>.</param>
    /// <param name="trials">Trials in all.</param>
    /// <returns>0 or more; 0 where the window has no more than its share.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// Bernoulli model, excess only: c ln(c/n) + (n - c) ln(1 - c/n), and the same outside, minus the same for all. Computed from deviances, which do
    /// not cancel where events are rare. Source: Kulldorff M, Commun Stat Theory Methods 1997;26:1481-1496 (from memory).
    /// </remarks>
    public static double Bernoulli(long inside, long trialsInside, long events, long trials)
    {
        if (trialsInside < 0 || trialsInside > trials) throw new ArgumentOutOfRangeException(nameof(trialsInside), trialsInside, "The trials in the window must lie between 0 and those in all.");
        if (inside < 0 || inside > trialsInside) throw new ArgumentOutOfRangeException(nameof(inside), inside, "The events in the window must lie between 0 and its trials.");
        if (events < inside || events - inside > trials - trialsInside) throw new ArgumentOutOfRangeException(nameof(events), events, "The events in all must hold those in the window, and those outside must not exceed the trials there.");
        return Excess(inside, trialsInside, events, trials);
    }

    internal static double Excess(long c, long n, long events, long trials)
    {
        if ((Int128)c * trials <= (Int128)events * n) return 0;
        var rate = (double)events / trials;
        var other = (double)(trials - events) / trials;
        var outside = trials - n;
        return Numerics.Binomial.Deviance(c, n * rate) + Numerics.Binomial.Deviance(n - c, n * other)
            + Numerics.Binomial.Deviance(events - c, outside * rate) + Numerics.Binomial.Deviance(outside - (events - c), outside * other);
    }
}
