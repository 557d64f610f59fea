using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Stratified;

/// <summary>Tests whether a rate rises or falls with an ordered score, for instance the week.</summary>
public static class CochranArmitage
{
    /// <summary>The test for a linear trend in proportions.</summary>
    /// <param name="groups">The groups; those without trials are left out.</param>
    /// <param name="scores">The score of each group, finite, in the same order.</param>
    /// <returns>The statistics with divisor N and N - 1, and what a straight line leaves; a reason where nothing can be told.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">Not one score for each group.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A score that is not finite.</exception>
    /// <remarks>
    /// z = Σ s (x - n p) / sqrt(p (1 - p) Σ n (s - mean)²). The variance given both margins is N / (N - 1) times that. Only the spacing of the scores matters.
    /// Source: Armitage P, Biometrics 1955;11:375-386; Mantel N, J Am Stat Assoc 1963;58:690-700 (from memory).
    /// </remarks>
    public static TrendResult Trend(IReadOnlyList<GroupCount> groups, IReadOnlyList<double> scores)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(scores);
        if (scores.Count != groups.Count) throw new ArgumentException("There must be one score for each group.", nameof(scores));
        foreach (var score in scores) Guard.Finite(score, nameof(scores));
        (GroupCount Group, double Score)[] used = [.. groups.Zip(scores).Where(pair => pair.First.Trials > 0).OrderBy(pair => pair.Second).ThenBy(pair => pair.First.Trials).ThenBy(pair => pair.First.Events)];
        GroupCount[] counts = Array.ConvertAll(used, pair => pair.Group);
        var homogeneity = HomogeneityTest.ChiSquare(counts);
        TrendResult Without(UndefinedReason reason) => new(used.Length, null, null, null, null, null, null, null, null, reason);
        if (homogeneity.Reason is { } reason) return Without(reason);
        if (used[0].Score == used[^1].Score) return Without(UndefinedReason.ScoresAllAlike);
        double trials = homogeneity.Trials, p = homogeneity.Events / trials;

        // Scores in units of their range, from their mean: neither shift nor scale must cost digits.
        var (origin, unit) = (used[0].Score, used[^1].Score - used[0].Score);
        var mean = used.Sum(pair => pair.Group.Trials * ((pair.Score - origin) / unit)) / trials;
        double sum = 0, squares = 0;
        foreach (var (group, score) in used)
        {
            var s = ((score - origin) / unit) - mean;
            sum += s * (group.Events - (group.Trials * p));
            squares += s * s * group.Trials;
        }

        var z = sum / Math.Sqrt(p * (1 - p) * squares);
        var (statistic, conditional) = (z * z, z * z * (trials - 1) / trials);
        var (left, degrees) = (Math.Max(0, homogeneity.Statistic!.Value - statistic), used.Length - 2);
        return new TrendResult(
            used.Length, z, statistic, GammaTail.ChiSquareUpper(1, statistic), conditional, GammaTail.ChiSquareUpper(1, conditional), left, degrees,
            degrees > 0 ? GammaTail.ChiSquareUpper(degrees, left) : null, null);
    }
}
