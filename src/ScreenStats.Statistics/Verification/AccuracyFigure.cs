using System.Globalization;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Verification;

/// <summary>One figure of a partly verified screen with its standard error and two kinds of limits; or undefined, with the reason.</summary>
public sealed record AccuracyFigure
{
    private AccuracyFigure(AccuracyMeasure measure, double confidence)
    {
        Measure = measure;
        Confidence = confidence;
    }

    /// <summary>What it measures.</summary>
    public AccuracyMeasure Measure { get; }

    /// <summary>The confidence of the limits, in (0, 1), two-sided.</summary>
    public double Confidence { get; }

    /// <summary>The value, a fraction in [0, 1]; null where undefined.</summary>
    public double? Value { get; private init; }

    /// <summary>The standard error of the value; null where the value is undefined, or where it cannot be estimated.</summary>
    public double? StandardError { get; private init; }

    /// <summary>Value plus and minus the normal quantile times the standard error, clipped to [0, 1]; null without a standard error.</summary>
    public Interval? Wald { get; private init; }

    /// <summary>The same on the scale of ln(p / (1 - p)), which stays inside (0, 1); null without a standard error.</summary>
    public Interval? Logit { get; private init; }

    /// <summary>Why there is no value; null where there is one.</summary>
    public UndefinedReason? Reason { get; private init; }

    /// <summary>Why there is no standard error; null where there is one.</summary>
    public UndefinedReason? StandardErrorReason { get; private init; }

    /// <summary>Whether there is a value.</summary>
    public bool IsDefined => Value is not null;

    /// <summary>Value and limits as a plain estimate; the limits are the logit ones.</summary>
    /// <param name="method">The name of the method, for tables.</param>
    /// <returns>The estimate; without a standard error it has no interval; undefined with the reason.</returns>
    public Estimate ToEstimate(string method) => (Value, Logit) switch
    {
        ({ } value, { } limits) => Estimate.Of(value, limits, method, Confidence),
        ({ } value, _) => Estimate.Point(value, method),
        _ => Estimate.Undefined(Reason ?? UndefinedReason.NoVerifiedRuns),
    };

    /// <summary>The figure in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => Reason is { } reason
        ? $"{Measure} undefined: {reason.Describe()}"
        : string.Create(CultureInfo.InvariantCulture, $"{Measure} {Value} ({StandardError}) {Logit}");

    internal static AccuracyFigure Undefined(AccuracyMeasure measure, double confidence, UndefinedReason reason) =>
        new(measure, confidence) { Reason = reason, StandardErrorReason = reason };

    internal static AccuracyFigure WithoutError(AccuracyMeasure measure, double confidence, double value, UndefinedReason reason) =>
        new(measure, confidence) { Value = value, StandardErrorReason = reason };

    /// <summary>A value with the variance of the value; at 0 and 1, or without variance, the standard error is left undefined.</summary>
    internal static AccuracyFigure Of(AccuracyMeasure measure, double confidence, double value, double variance)
    {
        if (!(value > 0 && value < 1) || !(variance > 0) || !double.IsFinite(variance))
            return WithoutError(measure, confidence, value, UndefinedReason.ValueAtTheEdge);
        var error = Math.Sqrt(variance);
        var z = Quantile.Normal(confidence);
        var slope = value * (1 - value);
        return new AccuracyFigure(measure, confidence)
        {
            Value = value,
            StandardError = error,
            Wald = new Interval(Math.Clamp(value - (z * error), 0, 1), Math.Clamp(value + (z * error), 0, 1)),
            Logit = LogitScale.Interval(value, value, variance / (slope * slope), confidence),
        };
    }
}
