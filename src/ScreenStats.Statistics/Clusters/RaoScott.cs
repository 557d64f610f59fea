using MathNet.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>Tests whether two groups of clusters have the same proportion.</summary>
/// <remarks>
/// Each is a chi-square statistic with 1 degree of freedom, of which the naive one takes the trials as independent. They hold for many
/// clusters in each group (the source simulates 20 and more); with few, small p-values come too often. Undefined where no trial or every trial
/// of both groups is an event, and where a group has fewer than two clusters.
/// </remarks>
public static class RaoScott
{
    /// <summary>Pearson's chi-square as if all trials were independent: for comparison, not for use.</summary>
    /// <param name="first">The clusters of one group.</param>
    /// <param name="second">The clusters of the other.</param>
    /// <returns>The statistic with its p-value; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>Σ (x - n p)² / (n p (1 - p)) over the two groups, without continuity correction.</remarks>
    public static ClusteredTest Naive(IEnumerable<(long Trials, long Events)> first, IEnumerable<(long Trials, long Events)> second)
    {
        var (one, other) = (ClusterSums.From(first), ClusterSums.From(second));
        return WhyNot(one, other, clustersNeeded: 1) is { } reason
            ? ClusteredTest.Undefined(reason)
            : Test(Pearson(one, other, 1, 1), 1, 1);
    }

    /// <summary>Rao and Scott's test with each group's own design effect.</summary>
    /// <param name="first">The clusters of one group.</param>
    /// <param name="second">The clusters of the other.</param>
    /// <returns>The statistic with its p-value; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// Pearson's statistic on x/d and n/d, d as <see cref="DesignEffect.Of"/> estimates it, below 1 too. Undefined also where one group has no
    /// event, only events, or clusters that do not differ at all.
    /// Source: Rao JNK, Scott AJ, Biometrics 1992;48:577-585.
    /// </remarks>
    public static ClusteredTest OwnDesignEffects(IEnumerable<(long Trials, long Events)> first, IEnumerable<(long Trials, long Events)> second)
    {
        var (one, other) = (ClusterSums.From(first), ClusterSums.From(second));
        if (WhyNot(one, other, clustersNeeded: 2) is { } reason) return ClusteredTest.Undefined(reason);
        var (effect, otherEffect) = (DesignEffect.Of(one), DesignEffect.Of(other));
        if ((effect.Reason ?? otherEffect.Reason) is { } unknown) return ClusteredTest.Undefined(unknown);
        var (d, e) = (effect.Raw!.Value, otherEffect.Raw!.Value);
        if (d == 0 || e == 0) return ClusteredTest.Undefined(UndefinedReason.ClustersAllAlike);
        return Test(Pearson(one, other, d, e), d, e);
    }

    /// <summary>Rao and Scott's test with one design effect pooled over both groups.</summary>
    /// <param name="first">The clusters of one group.</param>
    /// <param name="second">The clusters of the other.</param>
    /// <returns>The statistic with its p-value; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// The naive statistic divided by d = Σ (1 - n/N) n v / (p (1 - p)), v each group's ratio variance: for groups whose design effects are alike;
    /// steadier than <see cref="OwnDesignEffects"/> with few clusters. A group without an event, or with nothing else, adds no variance.
    /// Source: Rao JNK, Scott AJ, Biometrics 1992;48:577-585.
    /// </remarks>
    public static ClusteredTest PooledDesignEffect(IEnumerable<(long Trials, long Events)> first, IEnumerable<(long Trials, long Events)> second)
    {
        var (one, other) = (ClusterSums.From(first), ClusterSums.From(second));
        if (WhyNot(one, other, clustersNeeded: 2) is { } reason) return ClusteredTest.Undefined(reason);
        var all = (double)one.Trials + other.Trials;
        var p = (one.Events + other.Events) / all;
        double pooled = 0;
        foreach (var sums in (ReadOnlySpan<ClusterSums>)[one, other])
            pooled += (1 - (sums.Trials / all)) * sums.Trials * (DesignEffect.Of(sums).Variance ?? 0) / (p * (1 - p));
        return pooled == 0
            ? ClusteredTest.Undefined(UndefinedReason.ClustersAllAlike)
            : Test(Pearson(one, other, 1, 1) / pooled, pooled, pooled);
    }

    /// <summary>Donner's adjusted chi-square, through the pooled intraclass correlation.</summary>
    /// <param name="first">The clusters of one group.</param>
    /// <param name="second">The clusters of the other.</param>
    /// <returns>The statistic with its p-value; undefined with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    /// <remarks>
    /// Pearson's statistic with each group's term divided by c = 1 + (Σn²/N - 1) r, r the correlation of
    /// <see cref="IntraclassCorrelation.Pooled"/>. Undefined also where that is, or where a negative correlation makes c zero or less.
    /// Source: Donner A, Banting J, J Dent Res 1988;67:1483-1488 (from memory).
    /// </remarks>
    public static ClusteredTest Donner(IEnumerable<(long Trials, long Events)> first, IEnumerable<(long Trials, long Events)> second)
    {
        var (group, otherGroup) = (first.ToList(), second.ToList());
        var (one, other) = (ClusterSums.From(group), ClusterSums.From(otherGroup));
        if (WhyNot(one, other, clustersNeeded: 2) is { } reason) return ClusteredTest.Undefined(reason);
        var correlation = IntraclassCorrelation.Pooled([group, otherGroup]);
        if (correlation.Value is not { } r) return ClusteredTest.Undefined(correlation.Reason ?? UndefinedReason.NoTrials);
        var (c, d) = (Factor(one, r), Factor(other, r));
        if (c <= 0 || d <= 0) return ClusteredTest.Undefined(UndefinedReason.ClustersAllAlike);
        var all = (double)one.Trials + other.Trials;
        var p = (one.Events + other.Events) / all;
        return Test(Term(one.Events, one.Trials, p) / c + (Term(other.Events, other.Trials, p) / d), c, d);
    }

    private static double Factor(ClusterSums sums, double correlation) => 1 + ((((double)sums.TrialsSquared / sums.Trials) - 1) * correlation);

    private static double Pearson(ClusterSums one, ClusterSums other, double d, double e)
    {
        var p = ((one.Events / d) + (other.Events / e)) / ((one.Trials / d) + (other.Trials / e));
        return (Term(one.Events, one.Trials, p) / d) + (Term(other.Events, other.Trials, p) / e);
    }

    private static double Term(double events, double trials, double p)
    {
        var distance = events - (trials * p);
        return distance * distance / (trials * p * (1 - p));
    }

    // The upper tail of chi-square with one degree of freedom.
    private static ClusteredTest Test(double statistic, double first, double second) =>
        ClusteredTest.Of(statistic, SpecialFunctions.Erfc(Math.Sqrt(statistic / 2)), first, second);

    private static UndefinedReason? WhyNot(ClusterSums one, ClusterSums other, long clustersNeeded)
    {
        if (one.Trials == 0 || other.Trials == 0) return UndefinedReason.NoTrials;
        if (one.Events == 0 && other.Events == 0) return UndefinedReason.NoEvents;
        if (one.Events == one.Trials && other.Events == other.Trials) return UndefinedReason.OnlyEvents;
        return Math.Min(one.Clusters, other.Clusters) < clustersNeeded ? UndefinedReason.FewerThanTwoClusters : null;
    }
}
