using System.Collections.Immutable;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Sojourn;

/// <summary>The same test once, twice, three times of everybody: what each further round adds, and at what cost.</summary>
/// <remarks>
/// <para>Cases_n = C (1 - (1 - s)^n). False positives come from a pool that saturates, FP_n = F (1 - (1 - phi)^n): the same people have them
/// again and again, as with audiometry or blood assays; independent false positives are F = everybody else and phi = 1 - Sp. Total cost: people times (first
/// + (n - 1) further) + work-up times (Cases_n + FP_n).</para>
/// <para>The average cost per case hides what the last round costs: decide on the marginal one. A case found late by misses alone is taken to be as
/// good as one found early, and misses to be independent.</para>
/// <para>Source: Neuhauser D, Lewicki AM, N Engl J Med 1975;293:226-228 (from memory).</para>
/// </remarks>
public static class RepeatedTest
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "saturating-pool";

    /// <summary>One to so many rounds.</summary>
    /// <param name="pool">Who is tested, and what it costs.</param>
    /// <param name="tests">The most tests of each person, 1 to 1,000.</param>
    /// <returns>One step for each number of tests.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<RepeatedTestStep> Of(RepeatedTestPool pool, int tests)
    {
        ArgumentNullException.ThrowIfNull(pool);
        pool.Check();
        if (tests is < 1 or > 1000) throw new ArgumentOutOfRangeException(nameof(tests), tests, "A test is repeated 1 to 1,000 times.");
        return [.. Enumerable.Range(1, tests).Select(count => Step(pool, count))];
    }

    private static RepeatedTestStep Step(RepeatedTestPool pool, int count)
    {
        var cases = pool.Cases * Found(pool.Sensitivity, count);
        var falsePositives = pool.ProneToFalsePositive * Found(pool.FalsePositiveChance, count);
        var cost = (pool.People * (pool.CostOfFirstTest + ((count - 1) * pool.CostOfFurtherTest))) + (pool.CostOfWorkUp * (cases + falsePositives));
        var added = pool.Cases * Last(pool.Sensitivity, count);
        var addedCost = (pool.People * (count == 1 ? pool.CostOfFirstTest : pool.CostOfFurtherTest))
            + (pool.CostOfWorkUp * (added + (pool.ProneToFalsePositive * Last(pool.FalsePositiveChance, count))));
        return new RepeatedTestStep(
            count, cases, falsePositives, cost,
            Ratio(cost, cases, UndefinedReason.NoCases), Ratio(addedCost, added, UndefinedReason.NoCasesAdded));
    }

    private static Estimate Ratio(double cost, double cases, UndefinedReason without) =>
        cases <= 0 ? Estimate.Undefined(without)
        : double.IsFinite(cost / cases) ? Estimate.Point(cost / cases, Method)
        : Estimate.Undefined(UndefinedReason.TooLarge);

    private static double Found(double chance, int count) => chance == 1 ? 1 : -Precise.ExponentialMinusOne(count * Precise.LogOnePlus(-chance));

    /// <summary>The chance of a first positive at the last test.</summary>
    private static double Last(double chance, int count) => chance * Math.Pow(1 - chance, count - 1);
}
