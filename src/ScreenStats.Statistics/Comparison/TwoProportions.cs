using System.Globalization;

namespace ScreenStats.Statistics.Comparison;

/// <summary>The counts of two independent groups: successes (events) of trials in each.</summary>
public readonly record struct TwoProportions
{
    /// <summary>Makes the counts.</summary>
    /// <param name="firstSuccesses">Events in the first group, 0 to <paramref name="firstTrials"/>.</param>
    /// <param name="firstTrials">All counted in the first group, 0 or more.</param>
    /// <param name="secondSuccesses">Events in the second group, 0 to <paramref name="secondTrials"/>.</param>
    /// <param name="secondTrials">All counted in the second group, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or more events than were counted.</exception>
    public TwoProportions(long firstSuccesses, long firstTrials, long secondSuccesses, long secondTrials)
    {
        Guard.NotNegative(firstTrials);
        Guard.NotNegative(secondTrials);
        Within(firstSuccesses, firstTrials, nameof(firstSuccesses));
        Within(secondSuccesses, secondTrials, nameof(secondSuccesses));
        FirstSuccesses = firstSuccesses;
        FirstTrials = firstTrials;
        SecondSuccesses = secondSuccesses;
        SecondTrials = secondTrials;
    }

    /// <summary>Events in the first group.</summary>
    public long FirstSuccesses { get; }

    /// <summary>All counted in the first group.</summary>
    public long FirstTrials { get; }

    /// <summary>Events in the second group.</summary>
    public long SecondSuccesses { get; }

    /// <summary>All counted in the second group.</summary>
    public long SecondTrials { get; }

    /// <summary>What was counted in the first group and was no event.</summary>
    public long FirstFailures => FirstTrials - FirstSuccesses;

    /// <summary>What was counted in the second group and was no event.</summary>
    public long SecondFailures => SecondTrials - SecondSuccesses;

    /// <summary>The proportion of the first group; null without trials.</summary>
    public double? First => FirstTrials == 0 ? null : (double)FirstSuccesses / FirstTrials;

    /// <summary>The proportion of the second group; null without trials.</summary>
    public double? Second => SecondTrials == 0 ? null : (double)SecondSuccesses / SecondTrials;

    /// <summary>The counts, for debugging.</summary>
    /// <returns>Invariant text, for instance <c>56/70 and 48/80</c>.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{FirstSuccesses}/{FirstTrials} and {SecondSuccesses}/{SecondTrials}");

    /// <summary>Whether a group has no trials, so that nothing can be compared.</summary>
    internal bool IsEmpty => FirstTrials == 0 || SecondTrials == 0;

    /// <summary>The same with the groups changing places.</summary>
    internal TwoProportions Swapped => new(SecondSuccesses, SecondTrials, FirstSuccesses, FirstTrials);

    /// <summary>First minus second proportion from one exact integer, so that nearly equal proportions lose nothing.</summary>
    internal double Difference =>
        (double)(((Int128)FirstSuccesses * SecondTrials) - ((Int128)SecondSuccesses * FirstTrials)) / ((double)FirstTrials * SecondTrials);

    private static void Within(long successes, long trials, string name)
    {
        if (successes < 0 || successes > trials)
            throw new ArgumentOutOfRangeException(name, successes, "The number of events must lie between 0 and the number counted in the group.");
    }
}
