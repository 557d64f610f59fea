namespace ScreenStats.Statistics.Comparison;

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
