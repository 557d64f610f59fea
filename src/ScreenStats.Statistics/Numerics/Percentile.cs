namespace ScreenStats.Statistics.Numerics;

/// <summary>Percentiles by nearest rank: always one of the values.</summary>
public static class Percentile
{
    /// <summary>The smallest value with at least the given fraction of all values at or below it.</summary>
    /// <param name="values">Values with how often each occurs, in any order; a value may occur in several entries.</param>
    /// <param name="fraction">The fraction, in (0, 1]; 0.5 for the (lower) median, 0.9 for the 90th percentile.</param>
    /// <returns>The value; null where there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A fraction outside (0, 1], a count below 0, or a value that is not finite.</exception>
    /// <remarks>Rank ceil(fraction N), 1-based, with one part in 10^12 of slack for the rounding of the product.</remarks>
    public static double? NearestRank(IEnumerable<(double Value, long Count)> values, double fraction)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (!(fraction > 0 && fraction <= 1))
            throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "A percentile's fraction lies above 0 and is at most 1.");
        var sorted = Sorted(values, out var total);
        if (total == 0) return null;
        return At(sorted, Math.Clamp((long)Math.Ceiling((fraction * total) - (1e-12 * total)), 1, total));
    }

    /// <summary>The same for plain values.</summary>
    /// <param name="values">Values in any order.</param>
    /// <param name="fraction">The fraction, in (0, 1].</param>
    /// <returns>The value; null where there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A fraction outside (0, 1] or a value that is not finite.</exception>
    public static double? NearestRank(IEnumerable<double> values, double fraction) =>
        NearestRank(values.Select(value => (value, 1L)), fraction);

    /// <summary>The median: the middle value, or the mean of the middle two.</summary>
    /// <param name="values">Values with how often each occurs, in any order.</param>
    /// <returns>The median; null where there is no value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or a value that is not finite.</exception>
    public static double? Median(IEnumerable<(double Value, long Count)> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var sorted = Sorted(values, out var total);
        if (total == 0) return null;
        var lower = At(sorted, (total + 1) / 2);
        var upper = At(sorted, (total / 2) + 1);
        return lower + ((upper - lower) / 2);
    }

    private static List<(double Value, long Count)> Sorted(IEnumerable<(double Value, long Count)> values, out long total)
    {
        var sorted = new List<(double Value, long Count)>();
        total = 0;
        foreach (var (value, count) in values)
        {
            Guard.Finite(value);
            Guard.NotNegative(count);
            if (count == 0) continue;
            sorted.Add((value, count));
            total += count;
        }

        sorted.Sort((left, right) => left.Value.CompareTo(right.Value));
        return sorted;
    }

    private static double At(List<(double Value, long Count)> sorted, long rank)
    {
        long seen = 0;
        foreach (var (value, count) in sorted)
        {
            seen += count;
            if (seen >= rank) return value;
        }

        return sorted[^1].Value;
    }
}
