using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Proportions;

/// <summary>Intervals of one proportion: x successes in n trials, one call per method.</summary>
/// <remarks>
/// All take counts with 0 &lt;= successes &lt;= trials and a confidence in (0, 1), and throw
/// <see cref="ArgumentOutOfRangeException"/> otherwise. Without trials the result is undefined. The lower end is exactly 0
/// when no success was seen, the upper exactly 1 when no failure was.
/// </remarks>
public static class ProportionInterval
{
    /// <summary>Wilson's score interval.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// (x + z²/2 ± z sqrt(x(n - x)/n + z²/4)) / (n + z²). Covers the nominal share on average over rates; less for a few rates
    /// very near 0 or 1. Source: Wilson EB, J Am Stat Assoc 1927;22:209-212; Newcombe RG, Stat Med 1998;17:857-872, method 3.
    /// </remarks>
    public static ProportionEstimate Wilson(long successes, long trials, double confidence = 0.95) =>
        Of(IntervalMethod.Wilson, successes, trials, confidence);

    /// <summary>Wilson's score interval for counts that are real numbers, as effective sample sizes are.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more, finite.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>The formula of <see cref="Wilson(long, long, double)"/>, which needs no whole numbers.</remarks>
    public static Estimate Wilson(double successes, double trials, double confidence = 0.95)
    {
        Guard.Counts(successes, trials);
        Guard.Confidence(confidence);
        if (trials == 0) return Estimate.Undefined(UndefinedReason.NoTrials);
        var value = successes / trials;
        var interval = ScoreInterval.Wilson(successes, trials, Quantile.Normal(confidence)).Including(value);
        return Estimate.Of(value, interval, IntervalMethod.Wilson.Name(), confidence);
    }

    /// <summary>Wilson's score interval with continuity correction.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// The score equation with half an event taken from the lower and added to the upper side. Covers nearly always at least the
    /// nominal share. Source: Newcombe RG, Stat Med 1998;17:857-872, method 4.
    /// </remarks>
    public static ProportionEstimate WilsonContinuity(long successes, long trials, double confidence = 0.95) =>
        Of(IntervalMethod.WilsonContinuity, successes, trials, confidence);

    /// <summary>Clopper and Pearson's exact interval.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// The lower end solves P(X &gt;= x) = (1 - confidence)/2, the upper P(X &lt;= x) = (1 - confidence)/2; relative error below
    /// 1e-12. Never covers less than the nominal share. Source: Clopper CJ, Pearson ES, Biometrika 1934;26:404-413.
    /// </remarks>
    public static ProportionEstimate ClopperPearson(long successes, long trials, double confidence = 0.95) =>
        Of(IntervalMethod.ClopperPearson, successes, trials, confidence);

    /// <summary>Agresti and Coull's interval, clipped to [0, 1].</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// Wald's interval after adding z² trials and z²/2 successes (not 4 and 2). Covers the nominal share or somewhat more; wide at
    /// rates near 0 and 1. Source: Agresti A, Coull BA, Am Stat 1998;52:119-126.
    /// </remarks>
    public static ProportionEstimate AgrestiCoull(long successes, long trials, double confidence = 0.95) =>
        Of(IntervalMethod.AgrestiCoull, successes, trials, confidence);

    /// <summary>Jeffreys' interval: equal tails of Beta(x + 1/2, n - x + 1/2).</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// The lower end is 0 at no success and the upper 1 at no failure. Relative error below 1e-12. Covers the nominal share on
    /// average, less for a few rates near 0 and 1. Source: Brown LD, Cai TT, DasGupta A, Stat Sci 2001;16:101-133, section 3.1.2.
    /// </remarks>
    public static ProportionEstimate Jeffreys(long successes, long trials, double confidence = 0.95) =>
        Of(IntervalMethod.Jeffreys, successes, trials, confidence);

    /// <summary>The mid-P exact interval.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// As Clopper-Pearson with half the probability of x itself counted in each tail. Relative error below 1e-12. Covers the nominal
    /// share on average. Source: Newcombe RG, Stat Med 1998;17:857-872, method 6.
    /// </remarks>
    public static ProportionEstimate MidP(long successes, long trials, double confidence = 0.95) =>
        Of(IntervalMethod.MidP, successes, trials, confidence);

    /// <summary>The interval by a method chosen at run time.</summary>
    /// <param name="method">The method.</param>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a confidence outside (0, 1), or an unknown method.</exception>
    public static ProportionEstimate Of(IntervalMethod method, long successes, long trials, double confidence = 0.95)
    {
        Guard.Counts(successes, trials);
        Guard.Confidence(confidence);
        if (trials == 0) return new ProportionEstimate(successes, trials, confidence, method, null);
        var interval = method switch
        {
            IntervalMethod.Wilson => ScoreInterval.Wilson(successes, trials, Quantile.Normal(confidence)),
            IntervalMethod.WilsonContinuity => ScoreInterval.WilsonContinuity(successes, trials, Quantile.Normal(confidence)),
            IntervalMethod.ClopperPearson => ExactInterval.ClopperPearson(successes, trials, confidence),
            IntervalMethod.AgrestiCoull => ScoreInterval.AgrestiCoull(successes, trials, Quantile.Normal(confidence)),
            IntervalMethod.Jeffreys => ExactInterval.Jeffreys(successes, trials, confidence),
            IntervalMethod.MidP => ExactInterval.MidP(successes, trials, confidence),
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
        };

        return new ProportionEstimate(successes, trials, confidence, method, interval.Including((double)successes / trials));
    }
}
