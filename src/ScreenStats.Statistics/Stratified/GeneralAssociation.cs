using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Stratified;

/// <summary>Tests whether several groups differ within strata, in any pattern.</summary>
public static class GeneralAssociation
{
    /// <summary>The generalised Mantel-Haenszel test of several groups by event and no event.</summary>
    /// <param name="counts">Events and trials by stratum and group, in any order; what is listed twice is added up.</param>
    /// <param name="designEffect">How many times clusters raise the variance of independent trials, finite, 1 or more: the statistic is divided by it.</param>
    /// <returns>The statistic; a reason where no stratum compares two groups.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The design effect is not a finite number of 1 or more.</exception>
    /// <remarks>
    /// Q = dᵀ V⁻¹ d, d = Σ (x - n X / N), V = Σ X (N - X) / (N² (N - 1)) (N diag(n) - n nᵀ), of n trials and x events of a group, N and X of its stratum. One group of
    /// each set that shares strata is left out: V has no inverse else. Chi-square with as many degrees of freedom as groups are left. With two groups it is
    /// <see cref="CochranMantelHaenszel"/> without correction, with one stratum (N - 1) / N times Pearson's statistic. Steps grow with the third power of the
    /// smaller of groups and strata. Finds little where strata point opposite ways. Source: Mantel N, J Am Stat Assoc 1963;58:690-700; Landis JR, Heyman ER,
    /// Koch GG, Int Stat Rev 1978;46:237-254 (from memory). Divided by a design effect: Rao JNK, Scott AJ, Biometrics 1992;48:577-585.
    /// </remarks>
    public static GeneralAssociationResult Test(IReadOnlyList<StratumGroup> counts, double designEffect = 1)
    {
        ArgumentNullException.ThrowIfNull(counts);
        Guard.DesignEffect(designEffect);
        var strata = counts.Where(count => count.Trials > 0).GroupBy(count => count.Stratum).OrderBy(stratum => stratum.Key)
            .Select(stratum => stratum.GroupBy(count => count.Group).OrderBy(group => group.Key)
                .Select(group => (Group: group.Key, Events: (double)group.Sum(count => count.Events), Trials: (double)group.Sum(count => count.Trials))).ToArray())
            .Where(stratum => stratum.Length > 1 && stratum.Sum(group => group.Events) is > 0 and var events && events < stratum.Sum(group => group.Trials)).ToArray();
        if (strata.Length == 0) return new GeneralAssociationResult(0, 0, null, null, null, null, designEffect, UndefinedReason.NoComparableStratum);

        var groups = strata.SelectMany(stratum => stratum.Select(group => group.Group)).Distinct().Order().ToArray();
        var place = groups.Select((group, index) => (group, index)).ToDictionary(pair => pair.group, pair => pair.index);
        var (distance, diagonal, size, expected, others) = (new double[groups.Length], new double[groups.Length], new double[groups.Length], new double[groups.Length], new double[groups.Length]);
        foreach (var stratum in strata)
        {
            var (events, trials) = (stratum.Sum(group => group.Events), stratum.Sum(group => group.Trials));
            var scale = events / trials * (trials - events) / (trials - 1);
            foreach (var (group, x, n) in stratum)
            {
                var i = place[group];
                distance[i] += ((x * (trials - events)) - ((n - x) * events)) / trials;
                diagonal[i] += scale * n;
                size[i] += n;
                expected[i] += n * events / trials;
                others[i] += n * (trials - events) / trials;
            }
        }

        var kept = Kept(strata, place, size);
        var column = new int[groups.Length];
        Array.Fill(column, -1);
        for (var k = 0; k < kept.Length; k++) column[kept[k]] = k;

        // Each stratum takes a vector from the diagonal: V = diag(a) - W Wᵀ.
        var vectors = strata.Select(stratum =>
        {
            var (events, trials) = (stratum.Sum(group => group.Events), stratum.Sum(group => group.Trials));
            var scale = Math.Sqrt(events / trials * (trials - events) / (trials - 1) / trials);
            return stratum.Select(group => (Column: column[place[group.Group]], Value: scale * group.Trials)).Where(entry => entry.Column >= 0).ToArray();
        }).Where(vector => vector.Length > 0).ToArray();
        var statistic = kept.Length <= vectors.Length
            ? ByGroups([.. kept.Select(i => distance[i])], [.. kept.Select(i => diagonal[i])], vectors)
            : ByStrata([.. kept.Select(i => distance[i])], [.. kept.Select(i => diagonal[i])], vectors);
        if (statistic is not { } q) return new GeneralAssociationResult(groups.Length, strata.Length, null, null, null, null, designEffect, UndefinedReason.NotConverged);
        q = Math.Max(0, q) / designEffect;
        return new GeneralAssociationResult(
            groups.Length, strata.Length, q, kept.Length, GammaTail.ChiSquareUpper(kept.Length, q), Math.Min(expected.Min(), others.Min()), designEffect, null);
    }

    /// <summary>All groups but the largest of each set that is joined by strata.</summary>
    private static int[] Kept((int Group, double Events, double Trials)[][] strata, Dictionary<int, int> place, double[] size)
    {
        var root = Enumerable.Range(0, size.Length).ToArray();
        int Root(int i)
        {
            while (root[i] != i) i = root[i] = root[root[i]];
            return i;
        }

        foreach (var stratum in strata)
        {
            foreach (var (group, _, _) in stratum) root[Root(place[group])] = Root(place[stratum[0].Group]);
        }

        var left = Enumerable.Range(0, size.Length).GroupBy(Root).Select(set => set.MaxBy(i => size[i])).ToHashSet();
        return [.. Enumerable.Range(0, size.Length).Where(i => !left.Contains(i))];
    }

    private static double? ByGroups(double[] distance, double[] diagonal, (int Column, double Value)[][] vectors)
    {
        var matrix = new double[distance.Length, distance.Length];
        for (var i = 0; i < diagonal.Length; i++) matrix[i, i] = diagonal[i];
        foreach (var vector in vectors)
        {
            foreach (var (i, x) in vector)
            {
                foreach (var (j, y) in vector)
                {
                    if (j <= i) matrix[i, j] -= x * y;
                }
            }
        }

        return SymmetricMatrix.Factor(matrix, 1e-12, out _) is { } factor ? Product(distance, SymmetricMatrix.Solve(factor, distance)) : null;
    }

    /// <summary>Woodbury's identity: as many unknowns as strata.</summary>
    private static double? ByStrata(double[] distance, double[] diagonal, (int Column, double Value)[][] vectors)
    {
        var matrix = new double[vectors.Length, vectors.Length];
        var right = new double[vectors.Length];
        var byColumn = vectors.SelectMany((vector, s) => vector.Select(entry => (entry.Column, Stratum: s, entry.Value))).GroupBy(entry => entry.Column);
        for (var s = 0; s < vectors.Length; s++) matrix[s, s] = 1;
        foreach (var column in byColumn)
        {
            var weight = 1 / diagonal[column.Key];
            var entries = column.ToArray();
            foreach (var (_, s, x) in entries)
            {
                right[s] += x * weight * distance[column.Key];
                foreach (var (_, t, y) in entries)
                {
                    if (t <= s) matrix[s, t] -= x * weight * y;
                }
            }
        }

        if (SymmetricMatrix.Factor(matrix, 1e-12, out _) is not { } factor) return null;
        var sum = Product(right, SymmetricMatrix.Solve(factor, right));
        for (var i = 0; i < distance.Length; i++) sum += distance[i] * distance[i] / diagonal[i];
        return sum;
    }

    private static double Product(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
