using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>The true prevalence behind an apparent one.</summary>
public static class RoganGladen
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "rogan-gladen";

    /// <summary>Corrects an apparent prevalence for a test's sensitivity and specificity.</summary>
    /// <param name="successes">Positive tests, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Tests, 0 or more.</param>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <param name="designEffect">What the variance of the apparent prevalence is multiplied by, 1 or more.</param>
    /// <returns>The corrected prevalence; undefined without tests, and where sensitivity + specificity is 1 or less.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// (t + Sp - 1)/(Se + Sp - 1) with variance [d t(1 - t)/n + Var(Se) π² + Var(Sp) (1 - π)²]/(Se + Sp - 1)². Where t is 0 or 1 the
    /// variance is taken at (x + 1/2)/(n + 1); counts of 0 or n in an accuracy likewise (see <see cref="AccuracyStatement"/>). Wald's
    /// interval covers less than it says where few positives are expected or π is near 0.
    /// Source: Rogan WJ, Gladen B, Am J Epidemiol 1978;107:71-76.
    /// </remarks>
    public static CorrectedPrevalence Estimate(
        long successes, long trials, AccuracyStatement sensitivity, AccuracyStatement specificity, double confidence = 0.95, double designEffect = 1)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        Guard.DesignEffect(designEffect);
        var apparent = ProportionInterval.Wilson(successes, trials, confidence);
        if (apparent.Estimate is not { } t) return new CorrectedPrevalence(apparent, confidence) { Reason = UndefinedReason.NoTrials };
        var youden = sensitivity.Value + specificity.Value - 1;
        if (youden <= 0) return new CorrectedPrevalence(apparent, confidence) { Reason = UndefinedReason.TestNoBetterThanChance };
        var corrected = (t + specificity.Value - 1) / youden;
        var spread = successes == 0 || successes == trials ? (successes + 0.5) / (trials + 1.0) : t;
        var variance = (designEffect * spread * (1 - spread) / trials)
            + (sensitivity.Variance * corrected * corrected)
            + (specificity.Variance * (1 - corrected) * (1 - corrected));
        var standardError = Math.Sqrt(variance) / youden;
        if (!double.IsFinite(corrected) || !double.IsFinite(standardError))
            return new CorrectedPrevalence(apparent, confidence) { Reason = UndefinedReason.TestNoBetterThanChance };
        var half = Quantile.Normal(confidence) * standardError;
        return new CorrectedPrevalence(apparent, confidence)
        {
            Unclipped = corrected,
            StandardError = standardError,
            UnclippedInterval = new Interval(corrected - half, corrected + half),
        };
    }

    /// <summary>The share of confirmed results that are true, corrected for the confirmatory test's own errors.</summary>
    /// <param name="confirmed">Screen-positives the confirmatory test confirmed, 0 to <paramref name="conclusive"/>.</param>
    /// <param name="conclusive">Screen-positives with a conclusive confirmatory result: confirmed and refuted.</param>
    /// <param name="confirmatorySensitivity">Sensitivity of the confirmatory test.</param>
    /// <param name="confirmatorySpecificity">Specificity of the confirmatory test.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <param name="designEffect">What the variance of the observed share is multiplied by, 1 or more.</param>
    /// <returns>The corrected positive predictive value; undefined as for <see cref="Estimate"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// Among screen-positives the confirmatory test sees a "prevalence" too, the predictive value of the screen; its own errors bias it in the
    /// same way, so the same correction holds, if they do not depend on the screen's result within infected and uninfected people.
    /// </remarks>
    public static CorrectedPrevalence PositivePredictiveValue(
        long confirmed, long conclusive, AccuracyStatement confirmatorySensitivity, AccuracyStatement confirmatorySpecificity, double confidence = 0.95, double designEffect = 1) =>
        Estimate(confirmed, conclusive, confirmatorySensitivity, confirmatorySpecificity, confidence, designEffect);
}
