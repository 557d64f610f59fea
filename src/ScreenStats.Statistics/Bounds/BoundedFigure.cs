using System.Globalization;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Bounds;

/// <summary>The lowest and the highest value of a figure that the counts allow, with a confidence interval; or undefined, with the reason.</summary>
public sealed record BoundedFigure
{
    internal BoundedFigure(AccuracyMeasure measure, UndefinedReason reason)
    {
        Measure = measure;
        Reason = reason;
    }

    internal BoundedFigure(AccuracyMeasure measure, Interval bounds, double lowerStandardError, double upperStandardError, double criticalValue, Interval confidenceInterval)
    {
        Measure = measure;
        Bounds = bounds;
        LowerStandardError = lowerStandardError;
        UpperStandardError = upperStandardError;
        CriticalValue = criticalValue;
        ConfidenceInterval = confidenceInterval;
    }

    /// <summary>What it measures.</summary>
    public AccuracyMeasure Measure { get; }

    /// <summary>The worst and the best case: every value between them fits the counts as they are; null where undefined.</summary>
    public Interval? Bounds { get; }

    /// <summary>The standard error of the lower bound; null where undefined.</summary>
    public double? LowerStandardError { get; }

    /// <summary>The standard error of the upper bound; null where undefined.</summary>
    public double? UpperStandardError { get; }

    /// <summary>The critical value of the confidence interval, between the one-sided and the two-sided normal quantile; null where undefined.</summary>
    public double? CriticalValue { get; }

    /// <summary>Imbens and Manski's confidence interval for the figure itself, wherever between its bounds it lies; null where undefined.</summary>
    public Interval? ConfidenceInterval { get; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>The figure in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => Reason is { } reason
        ? $"{Measure} undefined: {reason.Describe()}"
        : string.Create(CultureInfo.InvariantCulture, $"{Measure} {Bounds} within {ConfidenceInterval}");
}
