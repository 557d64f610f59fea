using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>Lang and Reiczigel's interval of a true prevalence, for an accuracy that was itself measured.</summary>
public static class LangReiczigel
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "lang-reiczigel";

    /// <summary>Corrects an apparent prevalence for a test's sensitivity and specificity.</summary>
    /// <param name="successes">Positive tests, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Tests, 0 or more.</param>
    /// <param name="sensitivity">The sensitivity as stated; an interval enters by the counts of the matched distribution, an exact value without variance.</param>
    /// <param name="specificity">The specificity as stated, likewise.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <param name="designEffect">What both counts of the apparent prevalence are divided by, 1 or more.</param>
    /// <returns>
    /// Rogan and Gladen's value with this interval; undefined without tests, and where sensitivity + specificity is 1 or less, as stated or
    /// after the additions.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// With n' = n + z², p' = (x + z²/2)/n', Se' = (x_Se + 1)/(n_Se + 2), Sp' likewise, π' = (p' + Sp' - 1)/(Se' + Sp' - 1) and the shift
    /// d = 2 z² [π' Se'(1 - Se')/n_Se' - (1 - π') Sp'(1 - Sp')/n_Sp'], n_Se' = n_Se + 2: π' + d ± z sqrt([p'(1 - p')/n' + Se'(1 - Se') π'²/n_Se'
    /// + Sp'(1 - Sp') (1 - π')²/n_Sp'])/(Se' + Sp' - 1). Covers near the nominal share where Wald's interval does not, near 0 above all.
    /// Source: Lang Z, Reiczigel J, Prev Vet Med 2014;113:13-22 (the idea read in the abstract, the formula from memory).
    /// </remarks>
    public static CorrectedPrevalence Estimate(
        long successes, long trials, AccuracyStatement sensitivity, AccuracyStatement specificity, double confidence = 0.95, double designEffect = 1)
    {
        var plain = RoganGladen.Estimate(successes, trials, sensitivity, specificity, confidence, designEffect);
        if (plain.Reason is { } reason) return new CorrectedPrevalence(plain.Apparent, confidence) { Method = MethodName, Reason = reason };
        var z = Quantile.Normal(confidence);
        var n = (trials / designEffect) + (z * z);
        var p = ((successes / designEffect) + (z * z / 2)) / n;
        var (se, seVariance) = Added(sensitivity);
        var (sp, spVariance) = Added(specificity);
        var youden = se + sp - 1;
        if (youden <= 0)
            return new CorrectedPrevalence(plain.Apparent, confidence) { Method = MethodName, Reason = UndefinedReason.TestNoBetterThanChance };
        var centre = (p + sp - 1) / youden;
        var shift = 2 * z * z * ((centre * seVariance) - ((1 - centre) * spVariance));
        var standardError = Math.Sqrt((p * (1 - p) / n) + (seVariance * centre * centre) + (spVariance * (1 - centre) * (1 - centre))) / youden;
        var half = z * standardError;
        if (!double.IsFinite(centre) || !double.IsFinite(shift) || !double.IsFinite(half))
            return new CorrectedPrevalence(plain.Apparent, confidence) { Method = MethodName, Reason = UndefinedReason.TestNoBetterThanChance };
        return new CorrectedPrevalence(plain.Apparent, confidence)
        {
            Method = MethodName, Unclipped = plain.Unclipped, StandardError = standardError, AdjustedCentre = centre, Shift = shift,
            UnclippedInterval = new Interval(centre + shift - half, centre + shift + half),
        };
    }

    private static (double Value, double Variance) Added(AccuracyStatement stated)
    {
        if (stated.EffectiveCounts() is not var (successes, failures)) return (stated.Value, 0);
        var trials = successes + failures + 2;
        var value = (successes + 1) / trials;
        return (value, value * (1 - value) / trials);
    }
}
