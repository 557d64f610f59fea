using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>How many times likelier a result is in people with the condition than in people without.</summary>
/// <remarks>
/// Positive Se / (1 - Sp), negative (1 - Se) / Sp. Log-normal limits with variances (1 - Se)/TP + Sp/FP and Se/FN + (1 - Sp)/TN: Simel DL,
/// Samsa GP, Matchar DB, J Clin Epidemiol 1991;44:763-770. A ratio of 0 has limits from half a person added to each of the
/// four counts, stretched to 0. Coverage is near the nominal where the counts that enter are 5 or more.
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
            ? Estimate.Undefined(sensitivity == 0 ? UndefinedReason.NoPositiveResultPossible : UndefinedReason.NoFalsePositives)
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
            ? Estimate.Undefined(sensitivity == 1 ? UndefinedReason.NoNegativeResultPossible : UndefinedReason.NoTrueNegatives)
            : Estimate.Point((1 - sensitivity) / specificity, PredictiveValue.ExactInputsMethod);
    }

    /// <summary>The likelihood ratio of a positive result, from counts.</summary>
    /// <param name="counts">The four counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with limits; undefined without people of either kind, or without a false positive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static Estimate Positive(DiagnosticCounts counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (Nobody(counts) is { } reason) return Estimate.Undefined(reason);
        if (counts.FalsePositive == 0)
            return Estimate.Undefined(counts.TruePositive == 0 ? UndefinedReason.NoPositiveResultPossible : UndefinedReason.NoFalsePositives);
        return Ratio(counts.TruePositive, counts.FalseNegative, counts.FalsePositive, counts.TrueNegative, confidence);
    }

    /// <summary>The likelihood ratio of a negative result, from counts.</summary>
    /// <param name="counts">The four counts.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio with limits; undefined without people of either kind, or without a true negative.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static Estimate Negative(DiagnosticCounts counts, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        if (Nobody(counts) is { } reason) return Estimate.Undefined(reason);
        if (counts.TrueNegative == 0)
            return Estimate.Undefined(counts.FalseNegative == 0 ? UndefinedReason.NoNegativeResultPossible : UndefinedReason.NoTrueNegatives);
        return Ratio(counts.FalseNegative, counts.TruePositive, counts.TrueNegative, counts.FalsePositive, confidence);
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
