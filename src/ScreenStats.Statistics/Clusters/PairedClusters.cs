using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Clusters;

/// <summary>The difference of a proportion between two parts in which the same clusters stand, such as the same sites in two spans of time.</summary>
public static class PairedClusters
{
    /// <summary>The proportion of the second part less that of the first.</summary>
    /// <param name="clusters">Trials and events of each cluster in both parts; a cluster may stand in one part only.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The difference with its limits; undefined where a part has no trials or fewer than two clusters have any.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// <para>To the first order the difference is linear in the clusters' counts: cluster i adds Zᵢ = (x₂ᵢ − p₂ n₂ᵢ)/n₂ − (x₁ᵢ − p₁ n₁ᵢ)/n₁, and the
    /// variance is k/(k − 1) Σ Zᵢ² over the k clusters with trials in either part. With 2 to 29 clusters Student's quantile on k − 1 degrees of freedom takes
    /// the place of the normal one. Limits end at −1 and 1.</para>
    /// <para>What a cluster always has more or less of is not in the difference; two designs of independent groups would add it twice. Where no cluster differs
    /// between the parts by other than the difference itself the limits have no width: hold them against plain ones. Covers at least about the nominal share, and more where
    /// one cluster's proportion is many times the others'.</para>
    /// <para>Source: linearisation of a ratio over clusters, Binder DA, Int Stat Rev 1983;51:279-292 (from memory).</para>
    /// </remarks>
    public static PairedClustersEstimate Difference(IEnumerable<(long Trials1, long Events1, long Trials2, long Events2)> clusters, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        Guard.Confidence(confidence);
        (long Trials1, long Events1, long Trials2, long Events2)[] some = [.. clusters.Where(cluster => cluster != default)];
        foreach (var (n1, x1, n2, x2) in some)
        {
            Guard.Counts(x1, n1);
            Guard.Counts(x2, n2);
        }

        double trials1 = some.Sum(cluster => cluster.Trials1), trials2 = some.Sum(cluster => cluster.Trials2);
        if (trials1 == 0 || trials2 == 0) return PairedClustersEstimate.Undefined(some.Length, confidence, UndefinedReason.NoTrials);
        if (some.Length < 2) return PairedClustersEstimate.Undefined(some.Length, confidence, UndefinedReason.FewerThanTwoClusters);
        var (share1, share2) = (some.Sum(cluster => cluster.Events1) / trials1, some.Sum(cluster => cluster.Events2) / trials2);
        double squares = 0;
        foreach (var (n1, x1, n2, x2) in some)
        {
            var part = ((x2 - (share2 * n2)) / trials2) - ((x1 - (share1 * n1)) / trials1);
            squares += part * part;
        }

        var error = Math.Sqrt(some.Length / (some.Length - 1.0) * squares);
        var quantile = some.Length < WidenedInterval.ClustersForNormalQuantile ? Quantile.Student(confidence, some.Length - 1) : Quantile.Normal(confidence);
        var reach = quantile * error;
        return PairedClustersEstimate.Of(share2 - share1, error, new Interval(Math.Max(-1, share2 - share1 - reach), Math.Min(1, share2 - share1 + reach)), some.Length, confidence);
    }
}
