using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Planning;

/// <summary>How many tests a proportion needs.</summary>
public static class SampleSize
{
    /// <summary>The largest number of tests that is planned for.</summary>
    public const long Largest = 1_000_000_000_000;

    /// <summary>The fewest tests after which Wilson's interval is no wider than asked, at an expected proportion.</summary>
    /// <param name="proportion">The expected proportion, in [0, 1].</param>
    /// <param name="width">Upper minus lower limit, in (0, 1).</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <param name="designEffect">The design effect of repeated or clustered tests, 1 or more; 1 for independent ones.</param>
    /// <returns>The number with the interval recomputed at it; undefined beyond <see cref="Largest"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A proportion, width, confidence or design effect outside its domain.</exception>
    /// <remarks>
    /// With m = n / design effect trials and exactly p m successes (a real number) the width z sqrt(4 p (1 - p) m + z²) / (m + z²) falls strictly as n
    /// rises, so one test fewer is too wide and every larger number is narrow enough. What is counted in the end is not p m: nearer one half
    /// the interval is wider. Source: Wilson EB, J Am Stat Assoc 1927;22:209-212 (the interval).
    /// </remarks>
    public static WidthPlan ForWidth(double proportion, double width, double confidence = 0.95, double designEffect = 1)
    {
        Guard.Probability(proportion);
        if (!(width is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(width), width, "The width lies strictly between 0 and 1.");
        Guard.Confidence(confidence);
        Guard.DesignEffect(designEffect);
        var z = Quantile.Normal(confidence);

        Interval At(long tests)
        {
            var effective = tests / designEffect;
            return ScoreInterval.Wilson(proportion == 1 ? effective : proportion * effective, effective, z).Including(proportion);
        }

        if (At(Largest).Width > width) return new WidthPlan(proportion, width, confidence, designEffect, null, null, null);
        var (low, high) = (0L, Largest); // wide enough at high, not at low
        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (At(middle).Width <= width) high = middle;
            else low = middle;
        }

        return new WidthPlan(proportion, width, confidence, designEffect, high, At(high), high == 1 ? null : At(high - 1).Width);
    }

    /// <summary>The fewest tests after which not one event rules out a rate.</summary>
    /// <param name="rate">The rate to rule out, in (0, 1).</param>
    /// <param name="confidence">Confidence in (0, 1), one-sided.</param>
    /// <param name="designEffect">The design effect of repeated or clustered tests, 1 or more; 1 for independent ones.</param>
    /// <returns>The number with the confidence and the upper limit recomputed at it; undefined beyond <see cref="Largest"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rate, confidence or design effect outside its domain.</exception>
    /// <remarks>
    /// The least n with (1 - rate)^(n / design effect) at most 1 - confidence: then Clopper and Pearson's one-sided upper limit at no event
    /// is at most the rate. About 3 / rate at 95 %. Source: Hanley JA, Lippman-Hand A, JAMA 1983;249:1743-1745 (from memory).
    /// </remarks>
    public static ZeroEventsPlan ForZeroEvents(double rate, double confidence = 0.95, double designEffect = 1)
    {
        if (!(rate is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(rate), rate, "The rate lies strictly between 0 and 1.");
        Guard.Confidence(confidence);
        Guard.DesignEffect(designEffect);
        var each = Precise.LogOnePlus(-rate) / designEffect;
        var needed = Precise.LogOnePlus(-confidence);
        if (needed / each > Largest) return new ZeroEventsPlan(rate, confidence, designEffect, null, null, null, null);

        // A product that meets the bound but for the last digits meets it: half the tests of a rate of one half.
        bool Enough(long tests) => tests * each <= needed * (1 - 1e-12);
        var answer = Math.Max(1, (long)Math.Ceiling(needed / each) - 1);
        while (!Enough(answer)) answer++;

        double Confidence(long tests) => -Precise.ExponentialMinusOne(tests * each);
        var limit = ProportionInterval.Of(IntervalMethod.ClopperPearson, 0.0, answer / designEffect, Math.Max(confidence, 0.5000001), IntervalSide.Upper);
        return new ZeroEventsPlan(
            rate, confidence, designEffect, answer, Confidence(answer), confidence > 0.5 ? limit.Upper : null, answer == 1 ? null : Confidence(answer - 1));
    }
}
