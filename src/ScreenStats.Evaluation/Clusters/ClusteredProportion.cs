using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>Makes proportions with limits widened by the largest design effect.</summary>
internal static class ClusteredProportion
{
    /// <summary>A proportion over trials that are clustered in several ways.</summary>
    /// <param name="events">Events, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials.</param>
    /// <param name="confidence">Confidence, in (0, 1).</param>
    /// <param name="clusterings">Sums over the clusters of each way; of equal design effects the first leads.</param>
    /// <returns>
    /// The proportion. Two to four sites, or site-weeks, are too few to widen by, and the finding says how many there are. Where no design effect can be estimated, the limits are not widened, and the finding says why.
    /// </returns>
    public static ProportionFinding Of(
        long events, long trials, double confidence, params IEnumerable<(ClusterLevel Level, ClusterSums Sums)> clusterings)
    {
        (ClusterLevel Level, DesignEffectEstimate Effect)? largest = null;
        UndefinedReason? reason = null;
        var (fewSites, fewSiteWeeks) = ((long?)null, (long?)null);
        foreach (var (level, sums) in clusterings)
        {
            if (TooFew(level, sums.Clusters))
            {
                if (level == ClusterLevel.Sites) fewSites = sums.Clusters;
                else fewSiteWeeks = sums.Clusters;
                reason ??= DesignEffect.Of(sums).Reason ?? UndefinedReason.TooFewGroups;
                continue;
            }

            var effect = DesignEffect.Of(sums);
            if (effect.Raw is null) reason ??= effect.Reason;
            else if (largest is not { } leader || effect.Raw > leader.Effect.Raw) largest = (level, effect);
        }

        var widened = largest is { } driver
            ? WidenedInterval.Wilson(events, trials, driver.Effect, confidence)
            : WidenedInterval.Wilson(events, trials, 1, 0, confidence);
        return Of(events, trials, confidence, widened) with
        {
            DesignEffectUndefined = largest is null ? (reason ?? UndefinedReason.FewerThanTwoClusters).Describe() : null,
            ClusterLevel = largest?.Level,
            Clusters = largest?.Effect.Clusters,
            FewSites = fewSites,
            FewSiteWeeks = fewSiteWeeks,
        };
    }

    /// <summary>A proportion with Wilson's limits and limits that were widened, without a word on what they were widened by.</summary>
    public static ProportionFinding Of(long events, long trials, double confidence, WidenedEstimate widened)
    {
        var plain = ProportionInterval.Wilson(events, trials, confidence);
        return new ProportionFinding
        {
            Events = events,
            Trials = trials,
            Estimate = plain.Estimate,
            EstimateUndefined = plain.Reason?.Describe(),
            Lower = plain.Lower,
            Upper = plain.Upper,
            Method = plain.Method.Name(),
            Confidence = confidence,
            WidenedLower = widened.Lower,
            WidenedUpper = widened.Upper,
            DesignEffect = widened.DesignEffect,
            DesignEffectUndefined = null,
            ClusterLevel = null,
            Clusters = null,
        };
    }

    /// <summary>The rule of <see cref="WidenedInterval.FewestGroups"/>; a single site or site-week has none to differ from.</summary>
    private static bool TooFew(ClusterLevel level, long clusters) =>
        level is ClusterLevel.Sites or ClusterLevel.SiteWeeks && clusters is >= 2 and < WidenedInterval.FewestGroups;
}
