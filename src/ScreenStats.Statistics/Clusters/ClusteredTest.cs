using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>A chi-square test of two groups of clusters, or undefined with the reason.</summary>
public sealed record ClusteredTest
{
    private ClusteredTest(double? chiSquare, double? pValue, double? first, double? second, UndefinedReason? reason)
    {
        ChiSquare = chiSquare;
        PValue = pValue;
        FirstFactor = first;
        SecondFactor = second;
        Reason = reason;
    }

    /// <summary>The statistic, with 1 degree of freedom, 0 or more; null where undefined.</summary>
    public double? ChiSquare { get; }

    /// <summary>The two-sided p-value, in [0, 1]; null where undefined.</summary>
    public double? PValue { get; }

    /// <summary>What the variance of the first group was multiplied by: its design effect or correction factor; null where undefined.</summary>
    public double? FirstFactor { get; }

    /// <summary>The same of the second group.</summary>
    public double? SecondFactor { get; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; }

    internal static ClusteredTest Of(double chiSquare, double pValue, double first, double second) => new(chiSquare, pValue, first, second, null);

    internal static ClusteredTest Undefined(UndefinedReason reason) => new(null, null, null, null, reason);
}
