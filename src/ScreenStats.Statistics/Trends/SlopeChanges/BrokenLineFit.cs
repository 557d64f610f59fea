using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>A line of the logit over time that may change its slope, fitted to counts; or the reason why there is none.</summary>
public sealed record BrokenLineFit
{
    internal BrokenLineFit(int number, int periods, double confidence, UndefinedReason reason)
    {
        (Number, Periods, Confidence, Reason) = (number, periods, confidence, reason);
    }

    internal BrokenLineFit(int number, int periods, double confidence)
    {
        (Number, Periods, Confidence) = (number, periods, confidence);
    }

    /// <summary>The number of changes fitted.</summary>
    public int Number { get; }

    /// <summary>Periods with trials.</summary>
    public int Periods { get; }

    /// <summary>The confidence of all limits, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>The changes, in order of time; empty with a reason.</summary>
    public IReadOnlyList<SlopeChange> Changes { get; internal init; } = [];

    /// <summary>The straight parts, in order of time, one more than changes; empty with a reason.</summary>
    public IReadOnlyList<SlopeSegment> Segments { get; internal init; } = [];

    /// <summary>The logit at time 0, were the first segment longer; null with a reason.</summary>
    public double? Intercept { get; internal init; }

    /// <summary>The rate of each period given, in the order given, also of those without trials; empty with a reason.</summary>
    public IReadOnlyList<double> Fitted { get; internal init; } = [];

    /// <summary>The logarithm of the likelihood, binomial coefficients included; null with a reason.</summary>
    public double? LogLikelihood { get; internal init; }

    /// <summary>Twice the distance to the likelihood of a model that fits each period; null with a reason.</summary>
    public double? Deviance { get; internal init; }

    /// <summary>Pearson's statistic; null with a reason.</summary>
    public double? Pearson { get; internal init; }

    /// <summary>Periods less 2 less twice the number of changes; null with a reason.</summary>
    public int? DegreesOfFreedom { get; internal init; }

    /// <summary>Pearson's statistic over its degrees of freedom; null with a reason.</summary>
    public double? Dispersion { get; internal init; }

    /// <summary>The factor by which variances were multiplied; null with a reason.</summary>
    public double? VarianceFactor { get; internal init; }

    /// <summary>Akaike's criterion: -2 log likelihood + 2 (2 + 2 changes); null with a reason.</summary>
    public double? AkaikeCriterion => LogLikelihood is { } log ? (-2 * log) + (4 * (Number + 1)) : null;

    /// <summary>Why there is no fit; null where there is one.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>What the limits are made of: coefficients and places on the inner scale of time.</summary>
    internal LineState? State { get; init; }

    /// <summary>The rate at a time, within the periods or beyond them.</summary>
    /// <param name="time">The time, finite.</param>
    /// <returns>A rate with the limits of the line (not of the counts), or undefined with the reason of the fit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite.</exception>
    public Estimate RateAt(double time)
    {
        Guard.Finite(time);
        if (State is not { } state) return Estimate.Undefined(Reason!.Value);
        var gradient = state.Gradient(time);
        var (logit, error) = (state.Logit(time), state.Error(gradient));
        var half = state.Quantile * error;
        return Estimate.Of(LogitScale.Fraction(logit), new Interval(LogitScale.Fraction(logit - half), LogitScale.Fraction(logit + half)), BrokenLine.Method, Confidence);
    }

    /// <summary>The mean growth over a span: the sum of the segments' slopes, each times its share of the span.</summary>
    /// <param name="from">Where the span begins, finite.</param>
    /// <param name="to">Where it ends, finite and later.</param>
    /// <returns>The mean slope of the logit per unit of time, with limits; null with the reason of the fit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A time is not finite, or the end is not after the beginning.</exception>
    /// <remarks>
    /// Equal to (logit at the end - logit at the beginning) / (end - beginning). The error is that of the delta method over coefficients and
    /// places of changes together. Beyond the periods the first and last segment are taken as going on. Source: Clegg LX et al., Stat Med 2009;28:3670-3682 (from memory).
    /// </remarks>
    public MeanGrowth? MeanGrowth(double from, double to)
    {
        Guard.Finite(from);
        Guard.Finite(to);
        if (to <= from) throw new ArgumentOutOfRangeException(nameof(to), to, "The end of a span must lie after its beginning.");
        if (State is not { } state) return null;
        var (first, last) = (state.Gradient(from), state.Gradient(to));
        var span = to - from;
        var slope = (state.Logit(to) - state.Logit(from)) / span;
        var error = state.Error([.. last.Zip(first, (b, a) => (b - a) / span)]);
        var half = state.Quantile * error;
        return new MeanGrowth(from, to, slope, error, new Interval(slope - half, slope + half), Confidence);
    }
}
