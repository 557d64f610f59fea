using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>An exact interval of the apparent prevalence, mapped through the correction; the accuracy is taken as known.</summary>
public static class ExactPrevalence
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "exact";

    /// <summary>Corrects an apparent prevalence for a test's sensitivity and specificity, both taken as known.</summary>
    /// <param name="successes">Positive tests, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Tests, 0 or more.</param>
    /// <param name="sensitivity">The sensitivity; only its value enters.</param>
    /// <param name="specificity">The specificity; only its value enters.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <param name="interval">The exact interval of the apparent prevalence that is mapped.</param>
    /// <param name="designEffect">What both counts are divided by, 1 or more; other than 1 with Clopper and Pearson's only.</param>
    /// <returns>Rogan and Gladen's value with this interval; undefined without tests, and where sensitivity + specificity is 1 or less.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, an unknown interval, or Blaker's with a design effect.</exception>
    /// <remarks>
    /// Each limit c becomes (c + Sp - 1)/(Se + Sp - 1), cut to [0, 1]. Never covers less than the nominal share where the accuracy is
    /// exactly as stated; too narrow where it is not. Source: Reiczigel J, Földi J, Ózsvári L, Epidemiol Infect 2010;138:1674-1678. With a
    /// design effect the limits are Clopper and Pearson's on effective counts: Korn EL, Graubard BI, Surv Methodol 1998;24:193-201 (from memory).
    /// </remarks>
    public static CorrectedPrevalence Estimate(
        long successes, long trials, AccuracyStatement sensitivity, AccuracyStatement specificity, double confidence = 0.95,
        ExactMethod interval = ExactMethod.ClopperPearson, double designEffect = 1)
    {
        if (interval == ExactMethod.Blaker && designEffect != 1)
            throw new ArgumentOutOfRangeException(nameof(designEffect), designEffect, "Blaker's interval needs whole counts, so no design effect.");
        var plain = RoganGladen.Estimate(successes, trials, sensitivity, specificity, confidence, designEffect);
        if (plain.Reason is { } reason) return new CorrectedPrevalence(plain.Apparent, confidence) { Method = MethodName, Reason = reason };
        var apparent = interval switch
        {
            ExactMethod.ClopperPearson when designEffect == 1 => ExactInterval.ClopperPearson(successes, trials, tail: (1 - confidence) / 2),
            ExactMethod.ClopperPearson => Effective(successes / designEffect, trials / designEffect, confidence),
            ExactMethod.Blaker => BlakerInterval.Of(successes, trials, confidence),
            _ => throw new ArgumentOutOfRangeException(nameof(interval), interval, "Not an interval this library knows."),
        };
        return Through(apparent, plain, sensitivity, specificity);
    }

    /// <summary>Maps the interval of an apparent prevalence, made by any method, through the correction.</summary>
    /// <param name="apparent">Positives of tests with the interval to be mapped.</param>
    /// <param name="sensitivity">The sensitivity; only its value enters.</param>
    /// <param name="specificity">The specificity; only its value enters.</param>
    /// <returns>Rogan and Gladen's value with the mapped interval; undefined as for <see cref="Estimate"/>.</returns>
    /// <remarks>The correction rises with the apparent prevalence, so the mapped interval covers exactly as often as the one it is made of.</remarks>
    public static CorrectedPrevalence Mapped(ProportionEstimate apparent, AccuracyStatement sensitivity, AccuracyStatement specificity)
    {
        ArgumentNullException.ThrowIfNull(apparent);
        var plain = RoganGladen.Estimate(apparent.Successes, apparent.Trials, sensitivity, specificity, apparent.Confidence);
        if (plain.Reason is { } reason) return new CorrectedPrevalence(apparent, apparent.Confidence) { Method = MethodName, Reason = reason };
        return Through(apparent.Interval.GetValueOrDefault(), plain, sensitivity, specificity);
    }

    private static CorrectedPrevalence Through(Interval apparent, CorrectedPrevalence plain, AccuracyStatement sensitivity, AccuracyStatement specificity)
    {
        var youden = sensitivity.Value + specificity.Value - 1;
        return new CorrectedPrevalence(plain.Apparent, plain.Confidence)
        {
            Method = MethodName, Unclipped = plain.Unclipped,
            UnclippedInterval = new Interval((apparent.Lower + specificity.Value - 1) / youden, (apparent.Upper + specificity.Value - 1) / youden),
        };
    }

    private static Interval Effective(double x, double n, double confidence) => new(
        x == 0 ? 0 : new BetaDistribution(x, n - x + 1).EqualTailed(confidence).Lower,
        x == n ? 1 : new BetaDistribution(x + 1, n - x).EqualTailed(confidence).Upper);
}
