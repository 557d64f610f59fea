using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>How alike the trials of one cluster are: the intraclass correlation of yes-or-no counts.</summary>
public static class IntraclassCorrelation
{
    /// <summary>The analysis-of-variance estimator of one group of clusters.</summary>
    /// <param name="clusters">Trials and events of each cluster; those without trials are left out.</param>
    /// <returns>The correlation with its mean squares; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// With m clusters of n trials and x events, N = Σn, p = X/N: between B = Σ n (x/n - p)² / (m - 1), within W = Σ x (n - x) / n / (N - m),
    /// n0 = (N - Σn²/N) / (m - 1), correlation (B - W) / (B + (n0 - 1) W). It may be below 0. Undefined with fewer than two clusters, where each
    /// cluster has one trial, and where no trial or every trial is an event.
    /// Source: Ridout MS, Demétrio CGB, Firth D, Biometrics 1999;55:137-148 (from memory).
    /// </remarks>
    public static IntraclassCorrelationEstimate AnalysisOfVariance(IEnumerable<(long Trials, long Events)> clusters)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        return Pooled([clusters]);
    }

    /// <summary>The analysis-of-variance estimator pooled within several groups, each with its own proportion.</summary>
    /// <param name="groups">The clusters of each group.</param>
    /// <returns>The pooled correlation; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// As <see cref="AnalysisOfVariance"/>, each cluster measured from its own group's proportion, M clusters of G groups in all: M - G degrees
    /// of freedom between, N - M within, n0 = (N - Σ over groups of Σn²/N of the group) / (M - G).
    /// Source: Donner A, Banting J, J Dent Res 1988;67:1483-1488 (from memory).
    /// </remarks>
    public static IntraclassCorrelationEstimate Pooled(IEnumerable<IEnumerable<(long Trials, long Events)>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var (clusterCount, groupCount, trials, events) = (0L, 0L, 0L, 0L);
        double between = 0, within = 0, adjustment = 0;
        foreach (var group in groups)
        {
            var clusters = group.Where(cluster => cluster.Trials != 0 || cluster.Events != 0).ToList();
            var sums = ClusterSums.From(clusters);
            if (sums.Trials == 0) continue;
            var p = (double)sums.Events / sums.Trials;
            foreach (var (n, x) in clusters)
            {
                var distance = ((double)x / n) - p;
                between += n * distance * distance;
                within += (double)x / n * (n - x);
            }

            adjustment += (double)sums.TrialsSquared / sums.Trials;
            clusterCount += sums.Clusters;
            groupCount++;
            trials += sums.Trials;
            events += sums.Events;
        }

        if (trials == 0) return Undefined(0, UndefinedReason.NoTrials);
        if (clusterCount - groupCount < 1) return Undefined(clusterCount, UndefinedReason.FewerThanTwoClusters);
        if (events == 0) return Undefined(clusterCount, UndefinedReason.NoEvents);
        if (events == trials) return Undefined(clusterCount, UndefinedReason.OnlyEvents);
        if (trials == clusterCount) return Undefined(clusterCount, UndefinedReason.OneTrialInEachCluster);
        var size = (trials - adjustment) / (clusterCount - groupCount);
        between /= clusterCount - groupCount;
        within /= trials - clusterCount;
        return new IntraclassCorrelationEstimate(
            clusterCount, trials, events, between, within, size, (between - within) / (between + ((size - 1) * within)), null);
    }

    /// <summary>Fleiss and Cuzick's estimator: one minus the share of the variance that lies within clusters.</summary>
    /// <param name="clusters">Trials and events of each cluster; those without trials are left out.</param>
    /// <returns>The correlation without limits; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// 1 - Σ x (n - x) / n / ((N - m) p (1 - p)). Undefined as <see cref="AnalysisOfVariance"/> is.
    /// Source: Fleiss JL, Cuzick J, Appl Psychol Meas 1979;3:537-542 (from memory).
    /// </remarks>
    public static Estimate FleissCuzick(IEnumerable<(long Trials, long Events)> clusters)
    {
        var variance = AnalysisOfVariance(clusters);
        if (variance.MeanSquareWithin is not { } within) return Estimate.Undefined(variance.Reason ?? UndefinedReason.NoTrials);
        var p = (double)variance.Events / variance.Trials;
        return Estimate.Point(1 - (within / (p * (1 - p))), "fleiss-cuzick");
    }

    private static IntraclassCorrelationEstimate Undefined(long clusters, UndefinedReason reason) => new(clusters, 0, 0, null, null, null, null, reason);
}
