using System.Globalization;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>A figure estimated by maximum likelihood, with its standard error and limits; or without them, with the reason.</summary>
public sealed record LatentFigure
{
    internal LatentFigure(double value, double? variance, double confidence, UndefinedReason? standardErrorReason)
    {
        Value = value;
        Confidence = confidence;
        StandardErrorReason = standardErrorReason;
        if (variance is not { } v) return;
        StandardError = Math.Sqrt(v);
        var half = Quantile.Normal(confidence) * Math.Sqrt(v);
        Wald = new Interval(Math.Clamp(value - half, 0, 1), Math.Clamp(value + half, 0, 1));
        var slope = value * (1 - value);
        Logit = LogitScale.Interval(value, value, v / (slope * slope), confidence);
    }

    /// <summary>The value, a fraction in [0, 1].</summary>
    public double Value { get; }

    /// <summary>The confidence of the limits, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>The standard error from Fisher's information; null where it cannot be given.</summary>
    public double? StandardError { get; }

    /// <summary>Value plus and minus the normal quantile times the standard error, clipped to [0, 1]; null without a standard error.</summary>
    public Interval? Wald { get; }

    /// <summary>The same on the scale of ln(p / (1 - p)); null without a standard error.</summary>
    public Interval? Logit { get; }

    /// <summary>Why there is no standard error; null where there is one.</summary>
    public UndefinedReason? StandardErrorReason { get; }

    /// <summary>The figure in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value} ({StandardError})");
}
