using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>How many times likelier a result is in people with the condition than in people without.</summary>
/// <remarks>
/// Positive Se / (1 - Sp), negative (1 - Se) / Sp. Log-normal limits with variances (1 - Se)/TP + Sp/FP and Se/FN + (1 - Sp)/TN: Simel DL,
/// Samsa GP, Matchar DB, J Clin Epidemiol 1991;44:763-770. A ratio of 0 has limits from half a person added to each of the
/// four counts, stretched to 0. A ratio without upper bound (no false positive, no true negative) keeps the lower limit of Koopman's score interval for the ratio of two
/// proportions (Koopman PAR, Biometrics 1984;40:513-517). Coverage is near the nominal where the counts that enter are 5 or more.
/// </remarks>
public static class LikelihoodRatio
{
    /// <summary>The name of the interval's method in tables.</summary>
    public const string LogNormalMethod = "log-normal";

    /// <summary>The likelihood ratio of a positive result, from exact values.</summary>
    /// <param name="sensitivity">Sensitivity, in [0, 1].</param>
    /// <param name="specificity">Specificity, in [0, 1].</param>
    /// <returns>The ratio, 0 or more; undefined at a specificity of 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside [0, 1].</exception>
    public static Estimate Positive(double sensitivity, double specificity)
    {
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        return specificity == 1
            ? Estimate.Undefined(sensitivity == 0 ? UndefinedReason.NoPositiveResultPossible : UndefinedReason.SpecificityOfOne)
            : Estimate.Point(sensitivity / (1 - specificity), PredictiveValue.ExactInputsMethod);
    }

    /// <summary>The likelihood ratio of a negative result, from exact values.</summary>
    /// <param name="sensitivity">Sensitivity, in [0, 1].</param>
    /// <param name="specificity">Specificity, in [0, 1].</param>
    /// <returns>The ratio, 0 or more; undefined at a specificity of 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside [0, 1].</exception>
    public static Estimate Negative(double sensitivity, double specificity)
    {
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        return specificity == 0
            ? Estimate.Undefined(sensitivity == 1 ? UndefinedReason.NoNegativeResultPossible : UndefinedReason.SpecificityOfZero)
            : Estimate.Point((1 - sensitivity) / specificity, PredictiveValue.ExactInputsMethod);
    }

    /// <summary>The likelihood ratio of a positive result, from counts.</summary>
    /// <param name="counts">The four counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with limits; undefined without people of either kind; without a false positive undefined too, with a lower limit alone.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static Estimate Positive(DiagnosticCounts counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (Nobody(counts) is { } reason) return Estimate.Undefined(reason);
        if (counts.FalsePositive == 0)
            return AtLeast(counts.TruePositive, counts.WithCondition, counts.WithoutCondition, confidence, UndefinedReason.NoFalsePositives, UndefinedReason.NoPositiveResultPossible);
        return Ratio(counts.TruePositive, counts.FalseNegative, counts.FalsePositive, counts.TrueNegative, confidence);
    }

    /// <summary>The likelihood ratio of a negative result, from counts.</summary>
    /// <param name="counts">The four counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with limits; undefined without people of either kind; without a true negative undefined too, with a lower limit alone.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static Estimate Negative(DiagnosticCounts counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (Nobody(counts) is { } reason) return Estimate.Undefined(reason);
        if (counts.TrueNegative == 0)
            return AtLeast(counts.FalseNegative, counts.WithCondition, counts.WithoutCondition, confidence, UndefinedReason.NoTrueNegatives, UndefinedReason.NoNegativeResultPossible);
        return Ratio(counts.FalseNegative, counts.TruePositive, counts.TrueNegative, counts.FalsePositive, confidence);
    }

    /// <summary>The likelihood ratio of a positive result, from statements of any kind.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio, with limits where either is uncertain; undefined at a specificity of 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>The variance of the logarithm of a rate r is its logit variance times (1 - r)², which for counts is the formula above.</remarks>
    public static Estimate Positive(AccuracyStatement sensitivity, AccuracyStatement specificity, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        Guard.Confidence(confidence);
        return Counts(sensitivity, specificity) is { } counts
            ? Positive(counts, confidence)
            : specificity is { Value: 1, Kind: AccuracyKind.Counts } && sensitivity.Value > 0 ? Estimate.Undefined(UndefinedReason.NoFalsePositives)
            : Ratio(Positive(sensitivity.Value, specificity.Value), sensitivity, specificity.Complement(), confidence);
    }

    /// <summary>The likelihood ratio of a negative result, from statements of any kind.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio, with limits where either is uncertain; undefined at a specificity of 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>As for <see cref="Positive(AccuracyStatement, AccuracyStatement, double)"/>.</remarks>
    public static Estimate Negative(AccuracyStatement sensitivity, AccuracyStatement specificity, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        Guard.Confidence(confidence);
        return Counts(sensitivity, specificity) is { } counts
            ? Negative(counts, confidence)
            : specificity is { Value: 0, Kind: AccuracyKind.Counts } && sensitivity.Value < 1 ? Estimate.Undefined(UndefinedReason.NoTrueNegatives)
            : Ratio(Negative(sensitivity.Value, specificity.Value), sensitivity.Complement(), specificity, confidence);
    }

    /// <summary>The second proportion is 0 as counted: Koopman's lower limit, no upper one.</summary>
    private static Estimate AtLeast(long with, long allWith, long allWithout, double confidence, UndefinedReason unbounded, UndefinedReason nothing) =>
        with > 0 && ProportionRatio.Koopman(with, allWith, 0, allWithout, confidence).Lower is { } lower
            ? Estimate.Unbounded(lower, ContrastMethod.Koopman.Name(), confidence, unbounded)
            : Estimate.Undefined(nothing);

    private static DiagnosticCounts? Counts(AccuracyStatement sensitivity, AccuracyStatement specificity) =>
        sensitivity is { Kind: AccuracyKind.Counts, Successes: { } truePositive, Trials: { } with }
        && specificity is { Kind: AccuracyKind.Counts, Successes: { } trueNegative, Trials: { } without }
            ? new DiagnosticCounts(truePositive, with - truePositive, without - trueNegative, trueNegative)
            : null;

    private static Estimate Ratio(Estimate point, AccuracyStatement with, AccuracyStatement without, double confidence)
    {
        if (point.Value is not { } value) return point;
        var (r, w) = (with.AdjustedValue, without.AdjustedValue);
        var variance = (with.LogitVariance * (1 - r) * (1 - r)) + (without.LogitVariance * (1 - w) * (1 - w));
        if (variance == 0 || w <= 0) return point;
        var half = Quantile.Normal(confidence) * Math.Sqrt(variance);
        return Estimate.Of(value, new Interval(r / w * Math.Exp(-half), r / w * Math.Exp(half)).Including(value), LogNormalMethod, confidence);
    }

    /// <summary>(with / all with) / (without / all without) and its log-normal limits.</summary>
    private static Estimate Ratio(double with, double withOther, double without, double withoutOther, double confidence)
    {
        var value = with / (with + withOther) / (without / (without + withoutOther));
        var added = with == 0 ? 0.5 : 0;
        var (a, b, c, d) = (with + added, withOther + added, without + added, withoutOther + added);
        var centre = a / (a + b) / (c / (c + d));
        var half = Quantile.Normal(confidence) * Math.Sqrt((b / (a + b) / a) + (d / (c + d) / c));
        var interval = new Interval(centre * Math.Exp(-half), centre * Math.Exp(half)).Including(value);
        return Estimate.Of(value, interval, LogNormalMethod, confidence);
    }

    private static UndefinedReason? Nobody(DiagnosticCounts counts) =>
        counts.WithCondition == 0 ? UndefinedReason.NobodyWithTheCondition
        : counts.WithoutCondition == 0 ? UndefinedReason.NobodyWithoutTheCondition
        : null;
}
