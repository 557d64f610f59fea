using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Uncertainty.Information;

/// <summary>Means taken as the first value plus the mean distance from it, so that equal values have exactly that mean.</summary>
internal static class WeightedMean
{
    public static double Of(ImmutableArray<double> values)
    {
        var first = values[0];
        double sum = 0;
        foreach (var value in values) sum += value - first;
        return first + (sum / values.Length);
    }

    /// <summary>With weights that add up to 1; null for equal ones.</summary>
    public static double Of(ImmutableArray<double> values, ImmutableArray<double>? weights)
    {
        if (weights is not { } given) return Of(values);
        var first = values[0];
        double sum = 0;
        for (var i = 0; i < values.Length; i++) sum += given[i] * (values[i] - first);
        return first + sum;
    }
}
