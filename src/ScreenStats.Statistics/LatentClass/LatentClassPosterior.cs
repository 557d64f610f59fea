namespace ScreenStats.Statistics.LatentClass;

/// <summary>Prevalence and accuracy without a reference: the exact posterior of one or two tests in one population, from beta priors.</summary>
/// <remarks>
/// The counts alone cannot tell these figures apart (three for one free count, five for three); what the priors say decides, and stays visible however many
/// people are tested. Two tests are taken to err independently of each other within infected and within uninfected people. Source: Joseph L,
/// Gyorkos TW, Coupal L, Am J Epidemiol 1995;141:263-272, who drew from the same posterior by simulation.
/// </remarks>
public static class LatentClassPosterior
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "exact-posterior";

    /// <summary>Above so many divisions of the counts two tests are refused; some seconds of work.</summary>
    public const double MostDivisionsOfTwoTests = 5e8;

    /// <summary>Above so many divisions of the counts one test is refused; some seconds of work and 160 MB of memory.</summary>
    public const double MostDivisionsOfOneTest = 2e7;

    /// <summary>One test in one population.</summary>
    /// <param name="positives">Positive tests.</param>
    /// <param name="tests">All tests.</param>
    /// <param name="prevalence">What was known of the prevalence.</param>
    /// <param name="test">What was known of the test.</param>
    /// <param name="confidence">The probability between the limits, in (0, 1).</param>
    /// <returns>The posterior; undefined where there are more than <see cref="MostDivisionsOfOneTest"/> divisions.</returns>
    /// <exception cref="ArgumentNullException">No priors of the test.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a prior without parameters, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// Given how many y1 of the positives and y0 of the negatives are infected, the posterior is three independent beta distributions; the sum runs over
    /// all (y1, y0), each weighed by C(n1, y1) C(n0, y0) times the beta functions. Terms below e^-60 of the greatest are left out: together less than
    /// divisions × e^-60 of the whole, 2e-19 at most. Quantiles solve the mixture's distribution function, absolute error below 1e-9.
    /// </remarks>
    public static LatentPosterior OneTest(long positives, long tests, BetaPrior prevalence, TestPriors test, double confidence = 0.95)
    {
        Guard.Counts(positives, tests);
        Guard.Confidence(confidence);
        Check(prevalence, test);
        var divisions = (positives + 1.0) * (tests - positives + 1.0);
        return divisions > MostDivisionsOfOneTest
            ? new LatentPosterior(confidence, divisions, UndefinedReason.TooManyDivisions)
            : LatentSum.OneTest(positives, tests - positives, prevalence, test, confidence, divisions);
    }

    /// <summary>Two tests on the same people of one population.</summary>
    /// <param name="counts">The counts.</param>
    /// <param name="prevalence">What was known of the prevalence.</param>
    /// <param name="first">What was known of the first test.</param>
    /// <param name="second">What was known of the second test.</param>
    /// <param name="confidence">The probability between the limits, in (0, 1).</param>
    /// <returns>The posterior; undefined where there are more than <see cref="MostDivisionsOfTwoTests"/> divisions.</returns>
    /// <exception cref="ArgumentNullException">No priors of a test.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A prior without parameters, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// As for one test, over the infected of all four cells; divisions are the product of the cells' counts, each plus 1. What is left out is less
    /// than 5e-18 of the whole.
    /// </remarks>
    public static LatentPosterior TwoTests(TwoTestCounts counts, BetaPrior prevalence, TestPriors first, TestPriors second, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        Check(prevalence, first);
        Check(prevalence, second);
        var divisions = (counts.BothPositive + 1.0) * (counts.FirstOnly + 1.0) * (counts.SecondOnly + 1.0) * (counts.BothNegative + 1.0);
        return divisions > MostDivisionsOfTwoTests || Margins(counts) > MostDivisionsOfOneTest
            ? new LatentPosterior(confidence, divisions, UndefinedReason.TooManyDivisions)
            : LatentSum.TwoTests(counts, prevalence, first, second, confidence, divisions);
    }

    private static double Margins(TwoTestCounts counts) => Math.Max(
        (counts.BothPositive + counts.FirstOnly + 1.0) * (counts.SecondOnly + counts.BothNegative + 1.0),
        (counts.BothPositive + counts.SecondOnly + 1.0) * (counts.FirstOnly + counts.BothNegative + 1.0));

    private static void Check(BetaPrior prevalence, TestPriors test)
    {
        ArgumentNullException.ThrowIfNull(test);
        prevalence.Check(nameof(prevalence));
        test.Sensitivity.Check(nameof(test));
        test.Specificity.Check(nameof(test));
    }
}
