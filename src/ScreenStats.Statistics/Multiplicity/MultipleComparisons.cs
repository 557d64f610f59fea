namespace ScreenStats.Statistics.Multiplicity;

/// <summary>P-values adjusted for the number of comparisons made at once, in the order they were given.</summary>
public static class MultipleComparisons
{
    /// <summary>Bonferroni: each p times their number, at most 1.</summary>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1].</exception>
    /// <remarks>Controls the chance of any false finding, whatever the dependence. See <see cref="Holm"/>: never worse.</remarks>
    public static IReadOnlyList<double> Bonferroni(IReadOnlyList<double> pValues)
    {
        Check(pValues);
        var adjusted = new double[pValues.Count];
        for (var i = 0; i < adjusted.Length; i++) adjusted[i] = Math.Min(1, pValues[i] * adjusted.Length);
        return adjusted;
    }

    /// <summary>Holm's step-down adjustment.</summary>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order, monotone in the p-values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1].</exception>
    /// <remarks>
    /// The i-th smallest of m is multiplied by m - i + 1; each is at least the one before. Controls the chance of any false
    /// finding, whatever the dependence. Source: Holm S, Scand J Stat 1979;6:65-70.
    /// </remarks>
    public static IReadOnlyList<double> Holm(IReadOnlyList<double> pValues)
    {
        Check(pValues);
        var adjusted = new double[pValues.Count];
        var order = Order(pValues);
        double running = 0;
        for (var rank = 0; rank < order.Length; rank++)
        {
            running = Math.Max(running, Math.Min(1, pValues[order[rank]] * (order.Length - rank)));
            adjusted[order[rank]] = running;
        }

        return adjusted;
    }

    /// <summary>Benjamini and Hochberg's step-up adjustment.</summary>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order, monotone in the p-values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1].</exception>
    /// <remarks>
    /// The i-th smallest of m is multiplied by m / i; each is at most the one after. Controls the expected share of false findings
    /// among the findings, for independent (and positively dependent) comparisons. Source: Benjamini Y, Hochberg Y,
    /// J R Stat Soc B 1995;57:289-300.
    /// </remarks>
    public static IReadOnlyList<double> BenjaminiHochberg(IReadOnlyList<double> pValues)
    {
        Check(pValues);
        var adjusted = new double[pValues.Count];
        var order = Order(pValues);
        double running = 1;
        for (var rank = order.Length - 1; rank >= 0; rank--)
        {
            running = Math.Min(running, pValues[order[rank]] * order.Length / (rank + 1));
            adjusted[order[rank]] = running;
        }

        return adjusted;
    }

    /// <summary>Hochberg's step-up adjustment.</summary>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order, monotone in the p-values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1].</exception>
    /// <remarks>
    /// The i-th smallest of m is multiplied by m - i + 1, as in <see cref="Holm"/>; each is at most the one after. Controls the chance of any
    /// false finding for independent (and positively dependent) comparisons. Source: Hochberg Y, Biometrika 1988;75:800-802.
    /// </remarks>
    public static IReadOnlyList<double> Hochberg(IReadOnlyList<double> pValues) => StepUp(pValues, (rank, count) => count - rank);

    /// <summary>Hommel's adjustment.</summary>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order, monotone in the p-values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1].</exception>
    /// <remarks>
    /// The largest, over all sets of the comparisons that hold this one, of Simes' p-value of the set: the smallest of s p(i) / i over its s sorted
    /// p-values. Of all sets of one size the one with the largest other p-values decides, which takes steps in the square of their number. Controls
    /// the chance of any false finding for independent (and positively dependent) comparisons; never worse than <see cref="Hochberg"/>. Source:
    /// Hommel G, Biometrika 1988;75:383-386; Wright SP, Biometrics 1992;48:1005-1013 (adjusted values).
    /// </remarks>
    public static IReadOnlyList<double> Hommel(IReadOnlyList<double> pValues)
    {
        Check(pValues);
        var order = Order(pValues);
        var count = order.Length;
        var sorted = Array.ConvertAll(order, i => pValues[i]);
        var worst = (double[])sorted.Clone();
        for (var size = 2; size <= count; size++)
        {
            // The size - 1 largest, ranked 2 to size in a set whose smallest member is any of those before them.
            var start = count - size + 1;
            var ofOthers = double.PositiveInfinity;
            for (var rank = 2; rank <= size; rank++) ofOthers = Math.Min(ofOthers, size * sorted[start + rank - 2] / rank);
            for (var i = 0; i < start; i++) worst[i] = Math.Max(worst[i], Math.Min(size * sorted[i], ofOthers));

            // One of the largest itself stands in the set of the size largest.
            var ofLargest = Math.Min(size * sorted[start - 1], ofOthers);
            for (var i = start; i < count; i++) worst[i] = Math.Max(worst[i], ofLargest);
        }

        var adjusted = new double[count];
        for (var rank = 0; rank < count; rank++) adjusted[order[rank]] = Math.Min(1, worst[rank]);
        return adjusted;
    }

    /// <summary>Benjamini and Yekutieli's step-up adjustment.</summary>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order, monotone in the p-values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1].</exception>
    /// <remarks>
    /// As <see cref="BenjaminiHochberg"/> times 1 + 1/2 + … + 1/m, at most 1. Controls the expected share of false findings among the findings,
    /// whatever the dependence. Source: Benjamini Y, Yekutieli D, Ann Stat 2001;29:1165-1188.
    /// </remarks>
    public static IReadOnlyList<double> BenjaminiYekutieli(IReadOnlyList<double> pValues)
    {
        ArgumentNullException.ThrowIfNull(pValues);
        double harmonic = 0;
        for (var i = pValues.Count; i >= 1; i--) harmonic += 1.0 / i;
        return StepUp(pValues, (rank, count) => harmonic * count / (rank + 1));
    }

    /// <summary>The adjustment by a method chosen at run time.</summary>
    /// <param name="method">The method.</param>
    /// <param name="pValues">P-values, each in [0, 1].</param>
    /// <returns>Adjusted p-values, same order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value outside [0, 1], or an unknown method.</exception>
    public static IReadOnlyList<double> Adjust(AdjustmentMethod method, IReadOnlyList<double> pValues) => method switch
    {
        AdjustmentMethod.Bonferroni => Bonferroni(pValues),
        AdjustmentMethod.Holm => Holm(pValues),
        AdjustmentMethod.Hochberg => Hochberg(pValues),
        AdjustmentMethod.Hommel => Hommel(pValues),
        AdjustmentMethod.BenjaminiHochberg => BenjaminiHochberg(pValues),
        AdjustmentMethod.BenjaminiYekutieli => BenjaminiYekutieli(pValues),
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
    };

    /// <summary>From the largest down: the p-value of a rank (from 0) times its factor, at most the one after.</summary>
    private static double[] StepUp(IReadOnlyList<double> pValues, Func<int, int, double> factor)
    {
        Check(pValues);
        var adjusted = new double[pValues.Count];
        var order = Order(pValues);
        double running = 1;
        for (var rank = order.Length - 1; rank >= 0; rank--)
        {
            running = Math.Min(running, pValues[order[rank]] * factor(rank, order.Length));
            adjusted[order[rank]] = running;
        }

        return adjusted;
    }

    private static int[] Order(IReadOnlyList<double> pValues)
    {
        var order = new int[pValues.Count];
        for (var i = 0; i < order.Length; i++) order[i] = i;
        Array.Sort(order, (left, right) => pValues[left] != pValues[right] ? pValues[left].CompareTo(pValues[right]) : left.CompareTo(right));
        return order;
    }

    private static void Check(IReadOnlyList<double> pValues)
    {
        ArgumentNullException.ThrowIfNull(pValues);
        foreach (var p in pValues)
        {
            if (!(p >= 0 && p <= 1)) throw new ArgumentOutOfRangeException(nameof(pValues), p, "A p-value lies between 0 and 1.");
        }
    }
}
