using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>All pairs of several groups, compared at once.</summary>
public static class PairwiseComparison
{
    /// <summary>Marascuilo's procedure: simultaneous limits of all differences.</summary>
    /// <param name="groups">The groups; those without trials form no pair.</param>
    /// <param name="confidence">The confidence that all limits hold, in (0, 1).</param>
    /// <returns>The pairs, by the place of the first group and then of the second; empty with fewer than two groups.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// A pair differs where |p1 - p2| exceeds sqrt(χ²(confidence, k - 1)) sqrt(p1 (1 - p1) / n1 + p2 (1 - p2) / n2), k the groups with trials. It holds for
    /// every contrast, so that it finds fewer pairs than comparisons of pairs alone: all groups together may differ and no pair. With a rate
    /// of 0 or 1 its variance is 0, and the limits are too narrow. Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 7.4.7.4.
    /// </remarks>
    public static IReadOnlyList<MarascuiloPair> Marascuilo(IReadOnlyList<GroupCount> groups, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(groups);
        Guard.Confidence(confidence);
        var count = groups.Count(group => group.Trials > 0);
        if (count < 2) return [];
        var factor = Math.Sqrt(GammaTail.ChiSquareQuantile(count - 1, 1 - confidence, upperTail: true));
        return [.. Pairs(groups).Select(pair =>
        {
            var (a, b) = (groups[pair.First], groups[pair.Second]);
            var difference = Counts(a, b).Difference;
            var range = factor * Math.Sqrt(Variance(a) + Variance(b));
            var interval = new Interval(difference - range, difference + range).Clip(-1, 1);
            return new MarascuiloPair(pair.First, pair.Second, difference, range, interval, Math.Abs(difference) > range);
        })];
    }

    /// <summary>Newcombe's limits of each difference, and Fisher's p-values adjusted by Holm's method.</summary>
    /// <param name="groups">The groups; those without trials form no pair.</param>
    /// <param name="confidence">The confidence of the limits, in (0, 1).</param>
    /// <returns>The pairs, by the place of the first group and then of the second; empty with fewer than two groups.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// See <see cref="ProportionDifference.Newcombe"/>, <see cref="FisherExact.TwoSided"/> and <see cref="MultipleComparisons.Holm"/>. The p-value decides which
    /// pairs differ; the limits say by how much. Steps grow with the square of the number of groups.
    /// </remarks>
    public static IReadOnlyList<PairDifference> Newcombe(IReadOnlyList<GroupCount> groups, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(groups);
        Guard.Confidence(confidence);
        (int First, int Second)[] pairs = [.. Pairs(groups)];
        var p = Array.ConvertAll(pairs, pair =>
        {
            var (a, b) = (groups[pair.First], groups[pair.Second]);
            return Math.Clamp(FisherExact.TwoSided(a.Events, a.Trials, b.Events, b.Trials), 0, 1);
        });
        var adjusted = MultipleComparisons.Holm(p);
        var simultaneous = 1 - ((1 - confidence) / Math.Max(1, pairs.Length));
        return [.. pairs.Select((pair, i) =>
        {
            var counts = Counts(groups[pair.First], groups[pair.Second]);
            return new PairDifference(
                pair.First,
                pair.Second,
                ProportionDifference.Of(ContrastMethod.Newcombe, counts, confidence),
                ProportionDifference.Of(ContrastMethod.Newcombe, counts, simultaneous),
                p[i],
                adjusted[i]);
        })];
    }

    private static IEnumerable<(int First, int Second)> Pairs(IReadOnlyList<GroupCount> groups)
    {
        for (var i = 0; i < groups.Count; i++)
        {
            for (var j = i + 1; j < groups.Count; j++)
            {
                if (groups[i].Trials > 0 && groups[j].Trials > 0) yield return (i, j);
            }
        }
    }

    private static TwoProportions Counts(GroupCount a, GroupCount b) => new(a.Events, a.Trials, b.Events, b.Trials);

    private static double Variance(GroupCount group) => (double)group.Events / group.Trials * (group.Trials - group.Events) / group.Trials / group.Trials;
}
