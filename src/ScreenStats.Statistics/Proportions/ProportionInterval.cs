using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Proportions;

/// <summary>Intervals of one proportion: x successes in n trials, one call per method.</summary>
/// <remarks>
/// All take counts with 0 &lt;= successes &lt;= trials and a confidence in (0, 1), and throw
/// <see cref="ArgumentOutOfRangeException"/> otherwise. Without trials the result is undefined. The lower end is exactly 0
/// when no success was seen, the upper exactly 1 when no failure was. A one-sided limit spends the whole of 1 - confidence on its
/// side, so it is the end of a two-sided interval of confidence 2 confidence - 1; the other end is 0 or 1.
/// </remarks>
public static class ProportionInterval
{
    /// <summary>Wilson's score interval.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>
    /// (x + z²/2 ± z sqrt(x(n - x)/n + z²/4)) / (n + z²). Covers the nominal share on average over rates; less for a few rates
    /// very near 0 or 1. Source: Wilson EB, J Am Stat Assoc 1927;22:209-212; Newcombe RG, Stat Med 1998;17:857-872, method 3.
    /// </remarks>
    public static ProportionEstimate Wilson(long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.Wilson, successes, trials, confidence, side);

    /// <summary>Wilson's score interval for counts that are real numbers, as effective sample sizes are.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more, finite.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>The formula of <see cref="Wilson(long, long, double, IntervalSide)"/>, which needs no whole numbers.</remarks>
    public static EffectiveProportionEstimate Wilson(double successes, double trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.Wilson, successes, trials, confidence, side);

    /// <summary>Wilson's score interval with continuity correction.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>
    /// The score equation with half an event taken from the lower and added to the upper side. Covers nearly always at least the
    /// nominal share. Source: Newcombe RG, Stat Med 1998;17:857-872, method 4.
    /// </remarks>
    public static ProportionEstimate WilsonContinuity(long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.WilsonContinuity, successes, trials, confidence, side);

    /// <summary>Clopper and Pearson's exact interval.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>
    /// The lower end solves P(X &gt;= x) = (1 - confidence)/2, the upper P(X &lt;= x) = (1 - confidence)/2; relative error below
    /// 1e-12. Never covers less than the nominal share. Source: Clopper CJ, Pearson ES, Biometrika 1934;26:404-413.
    /// </remarks>
    public static ProportionEstimate ClopperPearson(long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.ClopperPearson, successes, trials, confidence, side);

    /// <summary>Agresti and Coull's interval, clipped to [0, 1].</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>
    /// Wald's interval after adding z² trials and z²/2 successes (not 4 and 2). Where an end was clipped the result's note says so. Covers the nominal share or somewhat more; wide at
    /// rates near 0 and 1. Source: Agresti A, Coull BA, Am Stat 1998;52:119-126.
    /// </remarks>
    public static ProportionEstimate AgrestiCoull(long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.AgrestiCoull, successes, trials, confidence, side);

    /// <summary>Jeffreys' interval: equal tails of Beta(x + 1/2, n - x + 1/2).</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>
    /// The lower end is 0 at no success and the upper 1 at no failure. Relative error below 1e-12. Covers the nominal share on
    /// average, less for a few rates near 0 and 1. At a confidence near 0 its nearer end is moved to the share observed, and the note says so. Source: Brown LD, Cai TT, DasGupta A, Stat Sci 2001;16:101-133, section 3.1.2.
    /// </remarks>
    public static ProportionEstimate Jeffreys(long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.Jeffreys, successes, trials, confidence, side);

    /// <summary>The mid-P exact interval.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1) (for one limit: outside (0.5, 1)).</exception>
    /// <remarks>
    /// As Clopper-Pearson with half the probability of x itself counted in each tail. Relative error below 1e-12. Covers the nominal
    /// share on average. At a confidence near 0 its nearer end is moved to the share observed, and the note says so.
    /// Source: Newcombe RG, Stat Med 1998;17:857-872, method 6.
    /// </remarks>
    public static ProportionEstimate MidP(long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both) =>
        Of(IntervalMethod.MidP, successes, trials, confidence, side);

    /// <summary>The interval by a method chosen at run time.</summary>
    /// <param name="method">The method.</param>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a confidence outside (0, 1) (for one limit: outside (0.5, 1)), or an unknown method.</exception>
    public static ProportionEstimate Of(IntervalMethod method, long successes, long trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both)
    {
        Guard.Counts(successes, trials);
        Guard.Confidence(confidence, side);
        var (interval, note) = trials == 0 ? (null, null) : Limits(method, successes, trials, confidence, side);
        return new ProportionEstimate(successes, trials, confidence, side, method, interval, note);
    }

    /// <summary>The interval by a method chosen at run time, for counts that are real numbers, as effective sample sizes are.</summary>
    /// <param name="method">The method.</param>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more, finite.</param>
    /// <param name="confidence">Confidence in (0, 1).</param>
    /// <param name="side">Both limits (default), or one limit that holds the whole confidence; one limit needs a confidence above 0.5.</param>
    /// <returns>The proportion with its interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a confidence outside (0, 1) (for one limit: outside (0.5, 1)), or an unknown method.</exception>
    /// <remarks>
    /// The formula of each method takes real numbers as it stands: the score intervals are quadratics, and the exact ones are quantiles
    /// of beta distributions (mid-P: half of the sum of two beta tails). With whole numbers it is the interval of the counts. How
    /// often it covers depends on how the effective number was come by.
    /// Source: Korn EL, Graubard BI, Surv Methodol 1998;24:193-201 (real counts in the exact interval; from memory).
    /// </remarks>
    public static EffectiveProportionEstimate Of(
        IntervalMethod method, double successes, double trials, double confidence = 0.95, IntervalSide side = IntervalSide.Both)
    {
        Guard.Counts(successes, trials);
        Guard.Confidence(confidence, side);
        var (interval, note) = trials == 0 ? (null, null) : Limits(method, successes, trials, confidence, side);
        return new EffectiveProportionEstimate(successes, trials, confidence, side, method, interval, note);
    }

    private static (Interval? Interval, IntervalNote? Note) Limits(IntervalMethod method, double x, double n, double confidence, IntervalSide side)
    {
        var tail = side == IntervalSide.Both ? (1 - confidence) / 2 : 1 - confidence;
        var formula = method switch
        {
            IntervalMethod.Wilson => ScoreInterval.Wilson(x, n, Quantile.NormalTail(tail)),
            IntervalMethod.WilsonContinuity => ScoreInterval.WilsonContinuity(x, n, Quantile.NormalTail(tail)),
            IntervalMethod.ClopperPearson => ExactInterval.ClopperPearson(x, n, tail),
            IntervalMethod.AgrestiCoull => ScoreInterval.AgrestiCoull(x, n, Quantile.NormalTail(tail)),
            IntervalMethod.Jeffreys => ExactInterval.Jeffreys(x, n, tail),
            IntervalMethod.MidP => ExactInterval.MidP(x, n, tail),
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
        };
        var both = formula.Including(x / n);
        var interval = side switch
        {
            IntervalSide.Both => both,
            IntervalSide.Lower => new Interval(both.Lower, 1),
            _ => new Interval(0, both.Upper),
        };

        return (interval, NoteOn(method, x, n, both, side) ?? Stretched(method, formula, both, side));
    }

    // The other methods are centred on the share, or hold it at any confidence.
    private static IntervalNote? Stretched(IntervalMethod method, Interval formula, Interval both, IntervalSide side)
    {
        if (method is not (IntervalMethod.Jeffreys or IntervalMethod.MidP)) return null;
        var moved = (both.Lower < formula.Lower && side != IntervalSide.Upper) || (both.Upper > formula.Upper && side != IntervalSide.Lower);
        return moved ? IntervalNote.StretchedToEstimate : null;
    }

    private static IntervalNote? NoteOn(IntervalMethod method, double x, double n, Interval both, IntervalSide side) => method switch
    {
        IntervalMethod.AgrestiCoull when both.Lower == 0 && side != IntervalSide.Upper => IntervalNote.ClippedAtZero,
        IntervalMethod.AgrestiCoull when both.Upper == 1 && side != IntervalSide.Lower => IntervalNote.ClippedAtOne,
        IntervalMethod.Jeffreys when x == 0 && side != IntervalSide.Upper => IntervalNote.ZeroByConvention,
        IntervalMethod.Jeffreys when x == n && side != IntervalSide.Lower => IntervalNote.OneByConvention,
        _ => null,
    };
}
