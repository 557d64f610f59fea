using System.Globalization;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>A stated sensitivity, specificity or prevalence: counts, a value with its interval, or a value taken as exact.</summary>
/// <remarks>
/// <para>Uncertainty is carried on the logit scale. Counts x of n: variance 1/(n v (1 - v)) with v = x/n. An interval: a beta distribution
/// is matched to it (see <see cref="BetaDistribution.Matching"/>), Beta(x + 1, n - x + 1) for counts x of n that need not be whole, and the
/// variance is 1/(x + 1/2) + 1/(n - x + 1/2). Exact: 0.</para>
/// <para>Where x is 0 or n the logit does not exist; then half a success and half a failure are added for the variance and for the
/// centre of the interval (Haldane 1956 and Anscombe 1956, from memory), never for <see cref="Value"/>. A value of exactly 1 (or 0) with
/// an interval is read as the n of n (0 of n) whose Clopper-Pearson limit it is.</para>
/// </remarks>
public sealed record AccuracyStatement
{
    private AccuracyStatement(AccuracyKind kind, double value, double adjusted, double logitVariance)
    {
        Kind = kind;
        Value = value;
        AdjustedValue = adjusted;
        LogitVariance = logitVariance;
    }

    /// <summary>How it was stated.</summary>
    public AccuracyKind Kind { get; }

    /// <summary>The value, a fraction in [0, 1].</summary>
    public double Value { get; }

    /// <summary>The successes, where stated as counts.</summary>
    public long? Successes { get; private init; }

    /// <summary>The trials, where stated as counts.</summary>
    public long? Trials { get; private init; }

    /// <summary>The interval as stated, where there was one.</summary>
    public Interval? StatedInterval { get; private init; }

    /// <summary>The confidence of the stated interval, where there was one.</summary>
    public double? StatedConfidence { get; private init; }

    /// <summary>The beta distribution matched to the stated interval, where there was one.</summary>
    public BetaDistribution? Matched { get; private init; }

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
        return new AccuracyStatement(AccuracyKind.Counts, (double)successes / trials, adjusted, variance) { Successes = successes, Trials = trials };
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
        if (lower == upper && lower == value)
        {
            Guard.Probability(value);
            Guard.Confidence(confidence);
            return new AccuracyStatement(AccuracyKind.Interval, value, value, 0) { StatedInterval = new Interval(lower, upper), StatedConfidence = confidence };
        }

        var matched = BetaDistribution.Matching(value, lower, upper, confidence);
        var (adjusted, variance) = value is <= 0 or >= 1
            ? OfCounts(matched.Alpha - 1, matched.Alpha + matched.Beta - 2)
            : (value, (1 / (matched.Alpha - 0.5)) + (1 / (matched.Beta - 0.5)));
        return new AccuracyStatement(AccuracyKind.Interval, value, adjusted, variance)
        {
            StatedInterval = new Interval(lower, upper), StatedConfidence = confidence, Matched = matched,
        };
    }

    /// <summary>A bare value, taken as exact.</summary>
    /// <param name="value">The value, in [0, 1].</param>
    /// <returns>The statement.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside [0, 1].</exception>
    public static AccuracyStatement Exact(double value)
    {
        Guard.Probability(value);
        return new AccuracyStatement(AccuracyKind.Exact, value, value, 0);
    }

    /// <summary>A figure computed from other statements, with the variance that theirs give it.</summary>
    internal static AccuracyStatement Combined(double value, double adjusted, double variance)
    {
        var slope = adjusted * (1 - adjusted);
        return new AccuracyStatement(AccuracyKind.Combined, value, adjusted, variance == 0 || slope == 0 ? 0 : variance / (slope * slope));
    }

    /// <summary>What is known of the share, from a stated start; null where it is taken as exact.</summary>
    /// <param name="prior">What was known before it was stated.</param>
    /// <returns>Counts and matched distributions add their weights to the prior's; a combined figure adds those that have its variance.</returns>
    internal BetaDistribution? Posterior(BetaDistribution prior)
    {
        if (EffectiveCounts() is not var (successes, failures)) return null;
        return new BetaDistribution(prior.Alpha + successes, prior.Beta + failures);
    }

    /// <summary>The counts, or those that the interval stands for, which need not be whole; null where it is taken as exact.</summary>
    internal (double Successes, double Failures)? EffectiveCounts()
    {
        if (Successes is { } successes && Trials is { } trials) return (successes, trials - successes);
        if (Matched is { } matched) return (matched.Alpha - 1, matched.Beta - 1);
        if (LogitVariance == 0) return null;
        var weight = 1 / (LogitVariance * AdjustedValue * (1 - AdjustedValue));
        return (AdjustedValue * weight, (1 - AdjustedValue) * weight);
    }

    /// <summary>The interval of the stated value at a confidence.</summary>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <returns>
    /// Wilson's interval for counts; for an interval the stated one where the confidence is the same, else the equal-tailed one of the
    /// matched distribution, stretched to the value; for a combined figure a logit interval; for an exact value the value alone.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public Interval IntervalAt(double confidence)
    {
        Guard.Confidence(confidence);
        if (Kind == AccuracyKind.Exact) return new Interval(Value, Value);
        if (Kind == AccuracyKind.Counts)
            return ProportionInterval.Wilson(Successes.GetValueOrDefault(), Trials.GetValueOrDefault(), confidence).Interval.GetValueOrDefault();
        if (StatedInterval is { } stated && StatedConfidence == confidence) return stated;
        if (Matched is { } matched) return matched.EqualTailed(confidence).Including(Value);
        if (LogitVariance == 0) return new Interval(Value, Value);
        return LogitScale.Interval(Value, AdjustedValue, LogitVariance, confidence);
    }

    /// <summary>One minus it: from a specificity the false-positive rate.</summary>
    /// <returns>The complement, stated in the same way.</returns>
    public AccuracyStatement Complement() => Kind switch
    {
        AccuracyKind.Counts => FromCounts(Trials.GetValueOrDefault() - Successes.GetValueOrDefault(), Trials.GetValueOrDefault()),
        AccuracyKind.Interval when StatedInterval is { } stated =>
            new AccuracyStatement(AccuracyKind.Interval, 1 - Value, 1 - AdjustedValue, LogitVariance)
            {
                StatedInterval = new Interval(1 - stated.Upper, 1 - stated.Lower), StatedConfidence = StatedConfidence,
                Matched = Matched is { } matched ? new BetaDistribution(matched.Beta, matched.Alpha) : null,
            },
        AccuracyKind.Combined => Combined(1 - Value, 1 - AdjustedValue, Variance),
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
}
