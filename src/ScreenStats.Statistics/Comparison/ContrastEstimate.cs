using System.Globalization;

namespace ScreenStats.Statistics.Comparison;

/// <summary>
/// A difference, ratio or odds ratio with its limits. Each of the three numbers may be missing on its own, with its reason: a ratio
/// to a group without events has a lower limit and no upper one.
/// </summary>
public sealed record ContrastEstimate
{
    internal ContrastEstimate(ContrastMeasure measure, ContrastMethod method, double confidence, Bound value, Bound lower, Bound upper)
    {
        Measure = measure;
        Method = method;
        Confidence = confidence;
        (Value, Reason) = (value.Value, value.Reason);
        (Lower, LowerReason) = (lower.Value, lower.Reason);
        (Upper, UpperReason) = (upper.Value, upper.Reason);
    }

    /// <summary>What is compared.</summary>
    public ContrastMeasure Measure { get; }

    /// <summary>How the limits were computed.</summary>
    public ContrastMethod Method { get; }

    /// <summary>The confidence of the limits, in (0, 1), two-sided.</summary>
    public double Confidence { get; }

    /// <summary>The difference, in [-1, 1], or the ratio, 0 or more; null where it is undefined or unbounded.</summary>
    public double? Value { get; }

    /// <summary>Why there is no value; null where there is one.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>The lower limit; null where the method gives none.</summary>
    public double? Lower { get; }

    /// <summary>Why there is no lower limit; null where there is one.</summary>
    public UndefinedReason? LowerReason { get; }

    /// <summary>The upper limit; null where it is unbounded or the method gives none.</summary>
    public double? Upper { get; }

    /// <summary>Why there is no upper limit; null where there is one.</summary>
    public UndefinedReason? UpperReason { get; }

    /// <summary>Both limits; null where either is missing.</summary>
    public Interval? Interval => Lower is { } lower && Upper is { } upper ? new Interval(lower, upper) : null;

    /// <summary>Whether there is a value.</summary>
    public bool IsDefined => Value is not null;

    /// <summary>The same as a plain estimate.</summary>
    /// <returns>
    /// The value with interval, method and confidence; the value alone where a limit is missing; undefined with the reason where there is
    /// no value.
    /// </returns>
    public Estimate ToEstimate() => (Value, Interval) switch
    {
        ({ } value, { } interval) => Estimate.Of(value, interval, Method.Name(), Confidence),
        ({ } value, null) => Estimate.Point(value, Method.Name()),
        _ => Estimate.Undefined(Reason ?? UndefinedReason.NoTrials),
    };

    /// <summary>The estimate in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Measure.Name()} {Show(Value)} [{Show(Lower)}, {Show(Upper)}] ({Method.Name()}, {Confidence})");

    private static string Show(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "undefined";
}
