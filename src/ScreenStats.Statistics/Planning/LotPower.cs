using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Planning;

/// <summary>How surely an excess of false positives in one lot is found.</summary>
/// <remarks>
/// <para>A lot is flagged as the evaluation flags it: the exact one-sided chance of at least its refuted positives, given all refuted
/// positives, all valid tests and its own (hypergeometric), times the number of lots, lies below the threshold. That is Holm's adjusted
/// p-value of the lot with the smallest p-value.</para>
/// <para>The power sums over both binomials, the lot's refuted positives and those of all others: exact but for parts of the sum below 1e-13.
/// Flags that come only in a later round, after another lot has been set apart, are not counted, so it is slightly too low. Runs
/// are taken as independent, and every positive as verified.</para>
/// </remarks>
public static class LotPower
{
    /// <summary>The most runs, of all lots together, that are planned for.</summary>
    public const long LargestPopulation = 10_000_000;

    private const double Negligible = 1e-16;

    /// <summary>The chance that a lot with the excess is flagged after a number of runs.</summary>
    /// <param name="question">The excess and the lots.</param>
    /// <param name="runs">Valid tests with the lot, 1 or more.</param>
    /// <returns>The power, in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, named, or more than <see cref="LargestPopulation"/> runs in all.</exception>
    public static double Of(LotQuestion question, long runs)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        if (runs < 1 || !Fits(question, runs))
            throw new ArgumentOutOfRangeException(nameof(runs), runs, "The runs must be at least 1, and those of all lots together at most ten million.");
        return Power(question, runs);
    }

    /// <summary>The runs that find the excess with the power asked for.</summary>
    /// <param name="question">The excess, the lots and the power.</param>
    /// <returns>The number with the power recomputed at it; undefined beyond <see cref="LargestPopulation"/> runs in all.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, named.</exception>
    /// <remarks>
    /// Exact power does not rise steadily: where one more event becomes necessary it dips. The answer is the smallest number from which the power
    /// stays at or above the one asked for over the next fiftieth (at least 20, at most 100 numbers), each of them computed; with one run
    /// fewer it does not reach it. A smaller number may reach it by luck of the whole numbers and lose it again.
    /// </remarks>
    public static LotPlan Runs(LotQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        bool Reaches(long runs) => Power(question, runs) >= question.Power;
        var (low, high) = (0L, 1L);
        while (!Reaches(high))
        {
            low = high;
            high *= 2;
            if (!Fits(question, high)) return new LotPlan(question, null, null, null, null, null, null);
        }

        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            if (Reaches(middle)) high = middle;
            else low = middle;
        }

        var end = high + Window(high);
        for (var next = high + 1; next <= end && Fits(question, next); next++)
        {
            if (Reaches(next)) continue;
            while (Fits(question, next) && !Reaches(next)) next++;
            if (!Fits(question, next)) return new LotPlan(question, null, null, null, null, null, null);
            high = next;
            end = high + Window(high);
        }

        var others = Others(question, high);
        var expected = (long)Math.Round(others * question.ExpectedRate);
        return new LotPlan(
            question, high, Power(question, high), high == 1 ? null : Power(question, high - 1), end,
            Critical(question.Lots, question.Threshold, high, others, expected, 1), expected);
    }

    private static long Window(long runs) => Math.Clamp(runs / 50, 20, 100);

    private static long Others(LotQuestion question, long runs) => question.OtherRuns ?? (question.Lots - 1) * runs;

    private static bool Fits(LotQuestion question, long runs) =>
        runs <= LargestPopulation && runs + ((double?)question.OtherRuns ?? ((double)(question.Lots - 1) * runs)) <= LargestPopulation;

    private static double Power(LotQuestion question, long runs)
    {
        var rate = question.ExpectedRate;
        return FlagChance(rate, rate + question.Excess, runs, Others(question, runs), question.Lots, question.Threshold);
    }

    /// <summary>The chance that a lot of any rate is flagged among others of one rate.</summary>
    internal static double FlagChance(double rate, double lotRate, long runs, long others, int lots, double threshold) =>
        FlagChance(FlagLimits(rate, runs, others, lots, threshold), lotRate, runs);

    /// <summary>The same where the limits are known: they do not depend on the lot's own rate.</summary>
    internal static double FlagChance(IReadOnlyList<(double Chance, long Needed)> limits, double lotRate, long runs)
    {
        double power = 0;
        var (last, tail) = (-1L, 0.0);
        foreach (var (chance, needed) in limits)
        {
            if (needed != last) (last, tail) = (needed, Binomial.BetaLower(needed, runs - needed + 1, lotRate, 1 - lotRate));
            power += chance * tail;
        }

        return Math.Clamp(power, 0, 1);
    }

    /// <summary>The events that the others may show, each number with its chance and the fewest events of the lot that flag it beside them.</summary>
    internal static List<(double Chance, long Needed)> FlagLimits(double rate, long runs, long others, int lots, double threshold)
    {
        var mode = (long)Math.Min(others, Math.Floor((others + 1) * rate));
        double Chance(long y) => Binomial.Probability(y, others, rate, 1 - rate);
        var from = mode;
        while (from > 0 && Chance(from - 1) > Negligible) from--;
        var limits = new List<(double Chance, long Needed)>();
        long needed = 1;
        for (var y = from; y <= others; y++)
        {
            var chance = Chance(y);
            if (y > mode && chance < Negligible) break;
            needed = Critical(lots, threshold, runs, others, y, needed);
            if (needed > runs) break; // nor will more events elsewhere make it easier
            limits.Add((chance, needed));
        }

        return limits;
    }

    /// <summary>The fewest events of the lot that flag it beside y events elsewhere, at least those that were needed beside fewer; runs + 1 where none do.</summary>
    private static long Critical(int lots, double threshold, long runs, long others, long y, long atLeast)
    {
        bool Flags(long x) => Hypergeometric.UpperTail(x, runs + others, x + y, runs) * lots < threshold;
        if (atLeast > runs || Flags(atLeast)) return atLeast;
        var (not, step) = (atLeast, 1L);
        while (not + step <= runs && !Flags(not + step))
        {
            not += step;
            step *= 2;
        }

        var yes = Math.Min(runs + 1, not + step);
        while (yes - not > 1)
        {
            var middle = not + ((yes - not) / 2);
            if (Flags(middle)) yes = middle;
            else not = middle;
        }

        return yes;
    }
}
