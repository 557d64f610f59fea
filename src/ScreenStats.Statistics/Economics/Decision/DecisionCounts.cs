namespace ScreenStats.Statistics.Economics.Decision;

/// <summary>What screening found among so many screens.</summary>
public readonly record struct DecisionCounts
{
    /// <summary>Makes the counts.</summary>
    /// <param name="truePositives">Positives that were infected, 0 or more.</param>
    /// <param name="falsePositives">Positives that were not, 0 or more.</param>
    /// <param name="screens">All screens, at least the positives.</param>
    /// <param name="infected">All infected among the screens, found or missed, from the true positives to the screens less the false positives; null where not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be.</exception>
    public DecisionCounts(long truePositives, long falsePositives, long screens, long? infected = null)
    {
        Guard.NotNegative(truePositives);
        Guard.NotNegative(falsePositives);
        if (screens < truePositives || screens - truePositives < falsePositives)
            throw new ArgumentOutOfRangeException(nameof(screens), screens, "The number of screens must not be below that of the positives.");
        if (infected is { } known && (known < truePositives || known > screens - falsePositives))
            throw new ArgumentOutOfRangeException(nameof(infected), infected, "The infected must lie between the true positives and the screens that were not false positives.");
        TruePositives = truePositives;
        FalsePositives = falsePositives;
        Screens = screens;
        Infected = infected;
    }

    /// <summary>Positives that were infected.</summary>
    public long TruePositives { get; }

    /// <summary>Positives that were not.</summary>
    public long FalsePositives { get; }

    /// <summary>All screens.</summary>
    public long Screens { get; }

    /// <summary>All infected among the screens, found or missed; null where not known.</summary>
    public long? Infected { get; }
}
