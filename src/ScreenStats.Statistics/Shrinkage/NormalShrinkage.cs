namespace ScreenStats.Statistics.Shrinkage;

/// <summary>Figures of one precision drawn together: closer to the truth on the whole than each by itself.</summary>
public static class NormalShrinkage
{
    /// <summary>Efron and Morris's form of the James-Stein estimator, towards the mean of the figures.</summary>
    /// <param name="values">The figures, finite, normal around the truth.</param>
    /// <param name="variance">The sampling variance that all share, finite and above 0.</param>
    /// <returns>The figures drawn in; a reason with fewer than four.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure that is not finite, or a variance that is not above 0.</exception>
    /// <remarks>
    /// x̄ + c (x - x̄) with c = 1 - (k - 3) v / Σ(x - x̄)², not below 0. On the whole closer than the figures themselves from four on, whatever the truth; a
    /// single figure far from the others may be drawn too far. Source: Efron B, Morris C, J Am Stat Assoc 1975;70:311-319; Sci Am 1977;236(5):119-127
    /// (from memory).
    /// </remarks>
    public static NormalShrinkageFit EfronMorris(IReadOnlyList<double> values, double variance)
    {
        ArgumentNullException.ThrowIfNull(values);
        foreach (var value in values) Guard.Finite(value, nameof(values));
        if (!(variance > 0) || !double.IsFinite(variance)) throw new ArgumentOutOfRangeException(nameof(variance), variance, "The variance must be a finite number above 0.");
        if (values.Count < 4) return new NormalShrinkageFit(values.Count, null, null, null, [], UndefinedReason.FewerThanFourGroups);
        double[] sorted = [.. values.Order()];
        var mean = sorted.Average();
        var distance = sorted.Sum(value => (value - mean) * (value - mean)) / variance;
        var factor = distance > values.Count - 3 ? 1 - ((values.Count - 3) / distance) : 0;
        return new NormalShrinkageFit(values.Count, mean, distance, factor, [.. values.Select(value => mean + (factor * (value - mean)))], null);
    }
}
