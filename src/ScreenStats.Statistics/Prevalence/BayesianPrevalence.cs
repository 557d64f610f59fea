using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>The exact posterior of prevalence, sensitivity and specificity after counts of all three.</summary>
/// <remarks>
/// <para>Positives x of n are binomial with probability π Se + (1 - π)(1 - Sp); counts behind the accuracy are binomial too; priors are beta
/// distributions. An accuracy stated with an interval enters by the beta distribution matched to it, an exact one without uncertainty.
/// Sensitivity and specificity may turn out to add up to less than 1: nothing is cut off.</para>
/// <para>The three-fold integral is done on the logit scale by nested trapezoid rules, halved until they agree; the outermost density is
/// interpolated from equal steps, halved until they foresee each other: no random numbers; means, deviations and quantiles good to 1e-7
/// or better, in some tens of milliseconds; to about 1e-6 and in seconds where millions of tests meet an accuracy of a few counts. It equals the finite mixture of beta distributions over the true positives among the positives and the false negatives among the
/// negatives. Model: Gelman A, Carpenter B, J R Stat Soc C 2020;69:1269-1283, section 2. The intervals hold the true value with the
/// stated probability on average over the prior.</para>
/// </remarks>
public static class BayesianPrevalence
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "bayes";

    /// <summary>The least weight of a prior: below it the integrals would run far beyond the smallest share that can be written.</summary>
    internal const double LeastWeight = 0.1;

    /// <summary>The posterior of all three.</summary>
    /// <param name="successes">Positive tests, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Tests, 0 or more.</param>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="priors">What was known before; uniform where null. Weights 0.1 or more.</param>
    /// <param name="confidence">The probability inside the intervals, in (0, 1).</param>
    /// <param name="designEffect">What both counts of the tests are divided by, 1 or more.</param>
    /// <returns>The posterior; undefined without tests, and where sensitivity + specificity is 1 or less as stated.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static PrevalencePosterior Estimate(
        long successes, long trials, AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyPriors? priors = null,
        double confidence = 0.95, double designEffect = 1)
    {
        var (result, integral) = Prepare(successes, trials, sensitivity, specificity, priors, confidence, designEffect);
        return integral is null ? result : result with
        {
            Prevalence = integral.Summary(0, confidence),
            Sensitivity = integral.Summary(1, confidence),
            Specificity = integral.Summary(2, confidence).Complement(),
        };
    }

    /// <summary>The posterior of the prevalence alone, in a third of the time.</summary>
    /// <param name="successes">Positive tests, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Tests, 0 or more.</param>
    /// <param name="sensitivity">The sensitivity as stated.</param>
    /// <param name="specificity">The specificity as stated.</param>
    /// <param name="priors">What was known before; uniform where null. Weights 0.1 or more.</param>
    /// <param name="confidence">The probability inside the intervals, in (0, 1).</param>
    /// <param name="designEffect">What both counts of the tests are divided by, 1 or more.</param>
    /// <returns>As <see cref="Estimate"/>, without sensitivity and specificity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static PrevalencePosterior EstimatePrevalence(
        long successes, long trials, AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyPriors? priors = null,
        double confidence = 0.95, double designEffect = 1)
    {
        var (result, integral) = Prepare(successes, trials, sensitivity, specificity, priors, confidence, designEffect);
        return integral is null ? result : result with { Prevalence = integral.Summary(0, confidence) };
    }

    private static (PrevalencePosterior Result, PosteriorIntegral? Integral) Prepare(
        long successes, long trials, AccuracyStatement sensitivity, AccuracyStatement specificity, AccuracyPriors? priors, double confidence, double designEffect)
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(specificity);
        Guard.DesignEffect(designEffect);
        var start = priors ?? AccuracyPriors.Uniform;
        Check(start.Prevalence);
        Check(start.Sensitivity);
        Check(start.Specificity);
        var result = new PrevalencePosterior(ProportionInterval.Wilson(successes, trials, confidence), start, confidence);
        if (trials == 0) return (result with { Reason = UndefinedReason.NoTrials }, null);
        if (sensitivity.Value + specificity.Value <= 1) return (result with { Reason = UndefinedReason.TestNoBetterThanChance }, null);
        var falsePositive = specificity.Complement();
        var mirrored = new BetaDistribution(start.Specificity.Beta, start.Specificity.Alpha);
        return (result, new PosteriorIntegral(
            successes / designEffect,
            (trials - successes) / designEffect,
            new PosteriorAxis(start.Prevalence),
            PosteriorAxis.Of(sensitivity, start.Sensitivity),
            PosteriorAxis.Of(falsePositive, mirrored)));
    }

    private static void Check(BetaDistribution prior)
    {
        if (!(prior.Alpha >= LeastWeight && prior.Beta >= LeastWeight))
            throw new ArgumentOutOfRangeException(nameof(prior), prior, "The weights of a prior must be 0.1 or more.");
    }
}
