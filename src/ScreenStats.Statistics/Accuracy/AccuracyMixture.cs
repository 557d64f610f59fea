namespace ScreenStats.Statistics.Accuracy;

/// <summary>The accuracy of several tests used side by side.</summary>
public static class AccuracyMixture
{
    /// <summary>The accuracy of a mixture: each test's own, weighted by how often it was used.</summary>
    /// <param name="parts">The sensitivity (or the specificity) of each test as stated, and its weight: a number of tests, 0 or more.</param>
    /// <returns>The statement; that of the one test itself where only one has a weight above 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A weight is negative or not finite, or none is above 0.</exception>
    /// <remarks>
    /// Value sum(w v), variance sum(w² Var(v)) with w the weight over the sum of weights: the statements come from different studies and
    /// are independent. The statement carries that variance; where the value is 0 or 1, by
    /// the n of n (0 of n) that has it. Exact where every part is exact.
    /// </remarks>
    public static AccuracyStatement Of(IEnumerable<(AccuracyStatement Accuracy, double Weight)> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var used = new List<(AccuracyStatement Accuracy, double Weight)>();
        double sum = 0;
        foreach (var (accuracy, weight) in parts)
        {
            if (weight is < 0 or double.NaN or double.PositiveInfinity)
                throw new ArgumentOutOfRangeException(nameof(parts), weight, "A weight is a finite number, 0 or more.");
            if (weight == 0) continue;
            used.Add((accuracy, weight));
            sum += weight;
        }

        if (used.Count == 0) throw new ArgumentOutOfRangeException(nameof(parts), 0, "At least one weight must be above 0.");
        if (used.Count == 1) return used[0].Accuracy;
        double value = 0, variance = 0;
        foreach (var (accuracy, weight) in used)
        {
            value += weight / sum * accuracy.Value;
            variance += weight / sum * (weight / sum) * accuracy.Variance;
        }

        value = Math.Clamp(value, 0, 1);
        if (used.TrueForAll(part => part.Accuracy.Value >= 1)) value = 1;
        if (used.TrueForAll(part => part.Accuracy.Value <= 0)) value = 0;
        if (variance == 0) return AccuracyStatement.Exact(value);
        if (value is 0 or 1)
        {
            // The variance of n of n is about 1/(2 n²): n is read from it.
            var trials = (long)Math.Max(1, Math.Round(Math.Sqrt(1 / (2 * variance))));
            return AccuracyStatement.FromCounts(value == 1 ? trials : 0, trials);
        }

        return AccuracyStatement.Combined(value, value, variance);
    }
}
