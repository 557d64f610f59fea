using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Accuracy;

/// <summary>What a positive or a negative result is worth where a known share of people has the condition.</summary>
/// <remarks>
/// With sensitivity Se, specificity Sp and prevalence p: positive Se p / (Se p + (1 - Sp)(1 - p)), negative
/// Sp (1 - p) / (Sp (1 - p) + (1 - Se) p). Intervals are Wald's on the logit scale: Mercaldo ND, Lau KF, Zhou XH,
/// Stat Med 2007;26:2170-2183. An accuracy counted as 0 of n or n of n enters the interval with half a success and half a failure added
/// (see <see cref="AccuracyStatement"/>), and the interval is then stretched to the figure itself, 0 or 1. Coverage is near the
/// nominal where each of the four counts is 5 or more, and uneven below.
/// </remarks>
public static class PredictiveValue
{
    /// <summary>The name of the interval's method in tables.</summary>
    public const string LogitMethod = "logit";

    /// <summary>The name in tables of Wald's interval.</summary>
    public const string WaldMethod = "wald";

    /// <summary>The name in tables of a figure whose inputs are all exact.</summary>
    public const string ExactInputsMethod = "exact-inputs";

    /// <summary>The share of positives that have the condition.</summary>
    /// <param name="sensitivity">Sensitivity, in [0, 1].</param>
    /// <param name="specificity">Specificity, in [0, 1].</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <returns>The positive predictive value; undefined where no positive result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside [0, 1].</exception>
    public static Estimate Positive(double sensitivity, double specificity, double prevalence)
    {
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        Guard.Probability(prevalence);
        var truePositives = sensitivity * prevalence;
        var falsePositives = (1 - specificity) * (1 - prevalence);
        return truePositives + falsePositives > 0
            ? Estimate.Point(truePositives / (truePositives + falsePositives), ExactInputsMethod)
            : Estimate.Undefined(UndefinedReason.NoPositiveResultPossible);
    }

    /// <summary>The share of negatives that do not have the condition.</summary>
    /// <param name="sensitivity">Sensitivity, in [0, 1].</param>
    /// <param name="specificity">Specificity, in [0, 1].</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <returns>The negative predictive value; undefined where no negative result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside [0, 1].</exception>
    public static Estimate Negative(double sensitivity, double specificity, double prevalence)
    {
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        Guard.Probability(prevalence);
        var trueNegatives = specificity * (1 - prevalence);
        var falseNegatives = (1 - sensitivity) * prevalence;
        return trueNegatives + falseNegatives > 0
            ? Estimate.Point(trueNegatives / (trueNegatives + falseNegatives), ExactInputsMethod)
            : Estimate.Undefined(UndefinedReason.NoNegativeResultPossible);
    }

    /// <summary>The positive predictive value with its interval, at a prevalence taken as exact.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with a logit interval; undefined where no positive result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Positive(AccuracyStatement sensitivity, AccuracyStatement specificity, double prevalence, double confidence = 0.95) =>
        Positive(sensitivity, specificity, AccuracyStatement.Exact(prevalence), confidence);

    /// <summary>The positive predictive value with its interval, the uncertainty of the prevalence included.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalence">The prevalence as stated, from another source than the two.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with a logit interval; undefined where no positive result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Positive(AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyStatement prevalence, double confidence = 0.95) =>
        Positive(sensitivity, specificity, prevalence, PredictiveInterval.Logit, confidence);

    /// <summary>The positive predictive value with an interval of the kind asked for.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalence">The prevalence as stated, from another source than the two.</param>
    /// <param name="interval">On the logit scale, or Wald's on the scale of the share, cut to [0, 1].</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with its interval; undefined where no positive result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or an unknown interval.</exception>
    public static Estimate Positive(
        AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyStatement prevalence, PredictiveInterval interval, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        ArgumentNullException.ThrowIfNull(prevalence);
        Guard.Confidence(confidence);
        var point = Positive(sensitivity.Value, specificity.Value, prevalence.Value);
        return WithInterval(point, sensitivity, specificity.Complement(), prevalence, 1, interval, confidence);
    }

    /// <summary>The negative predictive value with its interval, at a prevalence taken as exact.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with a logit interval; undefined where no negative result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Negative(AccuracyStatement sensitivity, AccuracyStatement specificity, double prevalence, double confidence = 0.95) =>
        Negative(sensitivity, specificity, AccuracyStatement.Exact(prevalence), confidence);

    /// <summary>The negative predictive value with its interval, the uncertainty of the prevalence included.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalence">The prevalence as stated, from another source than the two.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with a logit interval; undefined where no negative result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Negative(AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyStatement prevalence, double confidence = 0.95) =>
        Negative(sensitivity, specificity, prevalence, PredictiveInterval.Logit, confidence);

    /// <summary>The negative predictive value with an interval of the kind asked for.</summary>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="prevalence">The prevalence as stated, from another source than the two.</param>
    /// <param name="interval">On the logit scale, or Wald's on the scale of the share, cut to [0, 1].</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with its interval; undefined where no negative result can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or an unknown interval.</exception>
    public static Estimate Negative(
        AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyStatement prevalence, PredictiveInterval interval, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        ArgumentNullException.ThrowIfNull(prevalence);
        Guard.Confidence(confidence);
        var point = Negative(sensitivity.Value, specificity.Value, prevalence.Value);
        return WithInterval(point, specificity, sensitivity.Complement(), prevalence, -1, interval, confidence);
    }

    /// <summary>The positive predictive value from four counts, at a prevalence taken as exact.</summary>
    /// <param name="counts">The counts of a study whose share with the condition need not be the prevalence.</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with a logit interval; undefined where the counts hold nobody with, or nobody without, the condition.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Positive(DiagnosticCounts counts, double prevalence, double confidence = 0.95) =>
        FromCounts(counts, prevalence, confidence, Positive);

    /// <summary>The negative predictive value from four counts, at a prevalence taken as exact.</summary>
    /// <param name="counts">The counts of a study whose share with the condition need not be the prevalence.</param>
    /// <param name="prevalence">Prevalence, in [0, 1].</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The value with a logit interval; undefined where the counts hold nobody with, or nobody without, the condition.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Negative(DiagnosticCounts counts, double prevalence, double confidence = 0.95) =>
        FromCounts(counts, prevalence, confidence, Negative);

    /// <summary>The prevalence at which a stated share of the positives is real.</summary>
    /// <param name="share">The share, strictly between 0 and 1; a half for "as many true as false".</param>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>
    /// The prevalence with a logit interval; 0 at a specificity of 1, where every positive is real; undefined at a sensitivity of 0, where none is.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// s (1 - Sp)/(s (1 - Sp) + (1 - s) Se). Its logit is that of the share minus ln(Se/(1 - Sp)), so it has the variance of the logit of
    /// the positive predictive value at a known prevalence.
    /// </remarks>
    public static Estimate PrevalenceForPositiveShare(double share, AccuracyStatement sensitivity, AccuracyStatement specificity, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        Guard.Confidence(confidence);
        if (!(share > 0 && share < 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies strictly between 0 and 1, for instance 0.5.");
        if (sensitivity.Value == 0) return Estimate.Undefined(UndefinedReason.NoTruePositivePossible);
        var falsePositive = specificity.Complement();
        var value = share * falsePositive.Value / ((share * falsePositive.Value) + ((1 - share) * sensitivity.Value));
        return WithInterval(Estimate.Point(value, ExactInputsMethod), falsePositive, sensitivity, AccuracyStatement.Exact(share), 1, PredictiveInterval.Logit, confidence);
    }

    private static Estimate FromCounts(
        DiagnosticCounts counts, double prevalence, double confidence, Func<AccuracyStatement, AccuracyStatement, double, double, Estimate> value)
    {
        Guard.Probability(prevalence);
        Guard.Confidence(confidence);
        if (counts.Sensitivity() is not { } sensitivity) return Estimate.Undefined(UndefinedReason.NobodyWithTheCondition);
        if (counts.Specificity() is not { } specificity) return Estimate.Undefined(UndefinedReason.NobodyWithoutTheCondition);
        return value(sensitivity, specificity, prevalence, confidence);
    }

    /// <summary>
    /// The logit is ln(right / wrong) plus (for a negative value minus) the logit of the prevalence: right and wrong are the rates of the result in people where it is right and
    /// where it is wrong. The variance of ln(rate) is the logit variance times (1 - rate) squared.
    /// </summary>
    private static Estimate WithInterval(
        Estimate point, AccuracyStatement right, AccuracyStatement wrong, AccuracyStatement prevalence, int sign, PredictiveInterval kind, double confidence)
    {
        _ = Name(kind);
        if (point.Value is not { } value) return point;
        var r = right.AdjustedValue;
        var w = wrong.AdjustedValue;
        var p = prevalence.AdjustedValue;
        var variance = (right.LogitVariance * (1 - r) * (1 - r)) + (wrong.LogitVariance * (1 - w) * (1 - w)) + prevalence.LogitVariance;
        if (variance == 0) return point;

        // A rate or a prevalence that is exactly 0 or 1 decides the figure, whatever the others are.
        if (r <= 0 || w <= 0 || p <= 0 || p >= 1) return Estimate.Of(value, new Interval(value, value), Name(kind), confidence);
        var centre = Math.Log(r / w) + (sign * LogitScale.Logit(p));
        if (kind == PredictiveInterval.Logit) return Estimate.Of(value, LogitScale.Of(value, centre, variance, confidence), LogitMethod, confidence);
        var middle = LogitScale.Fraction(centre);
        var half = Quantile.Normal(confidence) * middle * LogitScale.Fraction(-centre) * Math.Sqrt(variance);
        return Estimate.Of(value, new Interval(middle - half, middle + half).Clip(0, 1).Including(value), WaldMethod, confidence);
    }

    private static string Name(PredictiveInterval kind) => kind switch
    {
        PredictiveInterval.Logit => LogitMethod,
        PredictiveInterval.Wald => WaldMethod,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not an interval this library knows."),
    };
}
