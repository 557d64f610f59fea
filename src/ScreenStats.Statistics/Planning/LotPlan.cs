namespace ScreenStats.Statistics.Planning;

/// <summary>How many runs of a lot find an excess of false positives with a given power.</summary>
public sealed record LotPlan
{
    internal LotPlan(LotQuestion question, long? runs, double? achieved, double? powerWithOneFewer, long? checkedTo, long? flaggedFrom, long? othersExpected)
    {
        Question = question;
        Runs = runs;
        Achieved = achieved;
        PowerWithOneFewer = powerWithOneFewer;
        CheckedTo = checkedTo;
        FlaggedFrom = flaggedFrom;
        RefutedInOtherLots = othersExpected;
    }

    /// <summary>What was asked.</summary>
    public LotQuestion Question { get; }

    /// <summary>
    /// The smallest number of runs from which the power stays at or above the one asked for, as far as <see cref="CheckedTo"/>; null where more
    /// than <see cref="LotPower.LargestPopulation"/> runs in all would be needed.
    /// </summary>
    public long? Runs { get; }

    /// <summary>The power at that number; null without one.</summary>
    public double? Achieved { get; }

    /// <summary>The power with one run fewer, below the one asked for; null without a number, and where one run is enough.</summary>
    public double? PowerWithOneFewer { get; }

    /// <summary>The largest number of runs up to which every power was computed: exact power can dip where one more event becomes necessary.</summary>
    public long? CheckedTo { get; }

    /// <summary>The fewest refuted positives that flag the lot where the other lots have <see cref="RefutedInOtherLots"/>; null without a number.</summary>
    public long? FlaggedFrom { get; }

    /// <summary>The refuted positives expected of all other lots together, rounded; null without a number.</summary>
    public long? RefutedInOtherLots { get; }

    /// <summary>Why there is no number; null where there is one.</summary>
    public UndefinedReason? Reason => Runs is null ? UndefinedReason.NoSampleLargeEnough : null;
}
