using System.Globalization;

namespace ScreenStats.Statistics;

/// <summary>A figure with its interval, method and confidence; or undefined, with the reason. Never NaN or infinite.</summary>
public sealed record Estimate
{
    private Estimate(double? value, Interval? interval, string? method, double? confidence, UndefinedReason? reason, double? lower = null)
    {
        Value = value;
        Interval = interval;
        Method = method;
        Confidence = confidence;
        Reason = reason;
        Lower = interval?.Lower ?? lower;
    }

    /// <summary>The figure; null where it is undefined.</summary>
    public double? Value { get; }

    /// <summary>The interval around the figure; null where it is undefined or was given without uncertainty.</summary>
    public Interval? Interval { get; }

    /// <summary>The lower end of <see cref="Interval"/>; of a figure that has no upper bound its lower limit; else null.</summary>
    public double? Lower { get; }

    /// <summary>The upper end of <see cref="Interval"/>, or null.</summary>
    public double? Upper => Interval?.Upper;

    /// <summary>What made the figure or its interval, in words; null where undefined.</summary>
    public string? Method { get; }

    /// <summary>The confidence of the interval, in (0, 1); null where there is none.</summary>
    public double? Confidence { get; }

    /// <summary>Why there is no figure; null where there is one.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>Whether there is a figure.</summary>
    public bool IsDefined => Value is not null;

    /// <summary>A figure with an interval.</summary>
    /// <param name="value">The figure, finite and inside the interval.</param>
    /// <param name="interval">The interval.</param>
    /// <param name="method">The method in words.</param>
    /// <param name="confidence">The confidence, in (0, 1).</param>
    /// <returns>A defined estimate.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The figure is not finite, or the confidence is outside (0, 1).</exception>
    public static Estimate Of(double value, Interval interval, string method, double confidence)
    {
        Guard.Finite(value);
        Guard.Confidence(confidence);
        return new Estimate(value, interval, method, confidence, null);
    }

    /// <summary>A figure without an interval, because its inputs were given as exact.</summary>
    /// <param name="value">The figure, finite.</param>
    /// <param name="method">The method in words.</param>
    /// <returns>A defined estimate.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The figure is not finite.</exception>
    public static Estimate Point(double value, string method)
    {
        Guard.Finite(value);
        return new Estimate(value, null, method, null, null);
    }

    /// <summary>No figure, and why.</summary>
    /// <param name="reason">The reason.</param>
    /// <returns>An undefined estimate.</returns>
    public static Estimate Undefined(UndefinedReason reason) => new(null, null, null, null, reason);

    /// <summary>A figure that has no upper bound, so that it is undefined, and yet a lower limit.</summary>
    /// <param name="lower">The lower limit, finite.</param>
    /// <param name="method">The method of the limit in words.</param>
    /// <param name="confidence">The confidence, in (0, 1), that it would have as one end of a two-sided interval.</param>
    /// <param name="reason">Why there is no upper bound.</param>
    /// <returns>An undefined estimate with a lower limit; it has no interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite, or the confidence is outside (0, 1).</exception>
    public static Estimate Unbounded(double lower, string method, double confidence, UndefinedReason reason)
    {
        Guard.Finite(lower);
        Guard.Confidence(confidence);
        return new Estimate(null, null, method, confidence, reason, lower);
    }

    /// <summary>The estimate in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => Reason is { } reason
        ? Lower is { } lower ? string.Create(CultureInfo.InvariantCulture, $"at least {lower} ({Method}): {reason.Describe()}") : $"undefined: {reason.Describe()}"
        : string.Create(CultureInfo.InvariantCulture, $"{Value} {Interval} ({Method})");
}
