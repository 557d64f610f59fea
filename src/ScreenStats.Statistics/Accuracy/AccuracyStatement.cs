using System.Globalization;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>A stated sensitivity, specificity or prevalence: counts, a value with its interval, or a value taken as exact.</summary>
/// <remarks>
/// <para>Uncertainty is carried on the logit scale. Counts x of n: variance 1/(n v (1 - v)) with v = x/n. An interval: the squared
/// half width of its logits over z. Exact: 0.</para>
/// <para>Where x is 0 or n the logit does not exist; then half a success and half a failure are added for the variance and for the
/// centre of the interval (Haldane 1956 and Anscombe 1956, from memory), never for <see cref="Value"/>. An interval that ends
/// at 0 or 1 is read from its other half; a value of exactly 1 (or 0) with an interval is read as the n of n (0 of n) whose
/// Clopper-Pearson limit it is.</para>
/// </remarks>
public sealed record AccuracyStatement
{
    private AccuracyStatement(AccuracyKind kind, double value, long? successes, long? trials, Interval? statedInterval, double? statedConfidence, double adjusted, double logitVariance)
    {
        Kind = kind;
        Value = value;
        Successes = successes;
        Trials = trials;
        StatedInterval = statedInterval;
        StatedConfidence = statedConfidence;
        AdjustedValue = adjusted;
        LogitVariance = logitVariance;
    }

    /// <summary>How it was stated.</summary>
    public AccuracyKind Kind { get; }

    /// <summary>The value, a fraction in [0, 1].</summary>
    public double Value { get; }

    /// <summary>The successes, where stated as counts.</summary>
    public long? Successes { get; }

    /// <summary>The trials, where stated as counts.</summary>
    public long? Trials { get; }

    /// <summary>The interval as stated, where there was one.</summary>
    public Interval? StatedInterval { get; }

    /// <summary>The confidence of the stated interval, where there was one.</summary>
    public double? StatedConfidence { get; }

    /// <summary>The variance on the logit scale at <see cref="AdjustedValue"/>; 0 where exact.</summary>
    public double LogitVariance { get; }

    /// <summary>The variance of the fraction: <see cref="LogitVariance"/> times (v (1 - v))² at <see cref="AdjustedValue"/>.</summary>
    public double Variance
    {
        get
        {
            var slope = AdjustedValue * (1 - AdjustedValue);
            return LogitVariance * slope * slope;
        }
    }

    /// <summary>The value, moved off 0 and 1 where the logit scale needs it (see the remarks of the type).</summary>
    internal double AdjustedValue { get; }

    /// <summary>A statement by counts.</summary>
    /// <param name="successes">For a sensitivity: the positives among the people with the condition. 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">For a sensitivity: the people with the condition. At least 1.</param>
    /// <returns>The statement.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or no trials.</exception>
    public static AccuracyStatement FromCounts(long successes, long trials)
    {
        if (trials < 1) throw new ArgumentOutOfRangeException(nameof(trials), trials, "An accuracy stated as counts needs at least one trial.");
        Guard.Counts(successes, trials);
        var (adjusted, variance) = OfCounts(successes, trials);
        return new AccuracyStatement(AccuracyKind.Counts, (double)successes / trials, successes, trials, null, null, adjusted, variance);
    }

    /// <summary>A statement by a value with its interval.</summary>
    /// <param name="value">The value, in [0, 1] and inside the interval.</param>
    /// <param name="lower">The lower end, in [0, 1].</param>
    /// <param name="upper">The upper end, in [0, 1].</param>
    /// <param name="confidence">The confidence of that interval, in (0, 1).</param>
    /// <returns>The statement; an interval without width is exact.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static AccuracyStatement FromInterval(double value, double lower, double upper, double confidence = 0.95)
    {
        Guard.Probability(value);
        Guard.Probability(lower);
        Guard.Probability(upper);
        Guard.Confidence(confidence);
        if (lower > value) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must not lie above the value.");
        if (upper < value) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the value.");
        var (adjusted, variance) = OfInterval(value, lower, upper, confidence);
        return new AccuracyStatement(AccuracyKind.Interval, value, null, null, new Interval(lower, upper), confidence, adjusted, variance);
    }

    /// <summary>A bare value, taken as exact.</summary>
    /// <param name="value">The value, in [0, 1].</param>
    /// <returns>The statement.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside [0, 1].</exception>
    public static AccuracyStatement Exact(double value)
    {
        Guard.Probability(value);
        return new AccuracyStatement(AccuracyKind.Exact, value, null, null, null, null, value, 0);
    }

    /// <summary>The interval of the stated value at a confidence.</summary>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <returns>
    /// Wilson's interval for counts; for an interval the stated one where the confidence is the same, else a logit interval of its
    /// variance; for an exact value the value alone.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public Interval IntervalAt(double confidence)
    {
        Guard.Confidence(confidence);
        if (Kind == AccuracyKind.Exact) return new Interval(Value, Value);
        if (Kind == AccuracyKind.Counts)
            return ProportionInterval.Wilson(Successes.GetValueOrDefault(), Trials.GetValueOrDefault(), confidence).Interval.GetValueOrDefault();
        if (StatedInterval is { } stated && StatedConfidence == confidence) return stated;
        return LogitScale.Interval(Value, AdjustedValue, LogitVariance, confidence);
    }

    /// <summary>One minus it: from a specificity the false-positive rate.</summary>
    /// <returns>The complement, stated in the same way.</returns>
    public AccuracyStatement Complement() => Kind switch
    {
        AccuracyKind.Counts => FromCounts(Trials.GetValueOrDefault() - Successes.GetValueOrDefault(), Trials.GetValueOrDefault()),
        AccuracyKind.Interval when StatedInterval is { } stated =>
            FromInterval(1 - Value, 1 - stated.Upper, 1 - stated.Lower, StatedConfidence.GetValueOrDefault(0.95)),
        _ => Exact(1 - Value),
    };

    /// <summary>The statement as it would be written, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => Kind switch
    {
        AccuracyKind.Counts => string.Create(CultureInfo.InvariantCulture, $"{Successes}/{Trials}"),
        AccuracyKind.Interval => string.Create(CultureInfo.InvariantCulture, $"{Value} {StatedInterval}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{Value} (exact)"),
    };

    private static (double Adjusted, double LogitVariance) OfCounts(double successes, double trials)
    {
        if (successes > 0 && successes < trials) return (successes / trials, (1 / successes) + (1 / (trials - successes)));
        return ((successes + 0.5) / (trials + 1), (1 / (successes + 0.5)) + (1 / (trials - successes + 0.5)));
    }

    private static (double Adjusted, double LogitVariance) OfInterval(double value, double lower, double upper, double confidence)
    {
        if (lower == upper) return (value, 0);
        if (value >= 1 || value <= 0)
        {
            // n of n has the exact lower limit (alpha / 2)^(1/n); 0 of n mirrors it.
            var limit = value >= 1 ? lower : 1 - upper;
            var trials = limit <= 0 ? 1 : Math.Max(1, Math.Log((1 - confidence) / 2) / Math.Log(limit));
            return OfCounts(value >= 1 ? trials : 0, trials);
        }

        var z = Quantile.Normal(confidence);
        var below = lower > 0 ? LogitScale.Logit(value) - LogitScale.Logit(lower) : double.NaN;
        var above = upper < 1 ? LogitScale.Logit(upper) - LogitScale.Logit(value) : double.NaN;
        var half = (double.IsNaN(below), double.IsNaN(above)) switch
        {
            (false, false) => (below + above) / 2,
            (false, true) => below,
            (true, false) => above,
            // [0, 1] says nothing: as wide as one trial's.
            _ => z * Math.Sqrt(1 / (value * (1 - value))),
        };
        return (value, half * half / (z * z));
    }
}
