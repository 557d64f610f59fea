using System.Globalization;

namespace ScreenStats.Statistics.Comparison.Paired;

/// <summary>Two readings with yes or no on the same people (or specimens): the four ways in which a pair can fall out.</summary>
public readonly record struct PairedCounts
{
    /// <summary>Makes the counts.</summary>
    /// <param name="both">Pairs in which both readings are positive.</param>
    /// <param name="firstOnly">Pairs in which only the first is.</param>
    /// <param name="secondOnly">Pairs in which only the second is.</param>
    /// <param name="neither">Pairs in which neither is.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or more pairs than can be counted.</exception>
    public PairedCounts(long both, long firstOnly, long secondOnly, long neither)
    {
        Guard.NotNegative(both);
        Guard.NotNegative(firstOnly);
        Guard.NotNegative(secondOnly);
        Guard.NotNegative(neither);
        if ((Int128)both + firstOnly + secondOnly + neither > long.MaxValue)
            throw new ArgumentOutOfRangeException(nameof(neither), neither, "The pairs must add up to no more than a 64-bit whole number.");
        Both = both;
        FirstOnly = firstOnly;
        SecondOnly = secondOnly;
        Neither = neither;
    }

    /// <summary>Pairs in which both readings are positive.</summary>
    public long Both { get; }

    /// <summary>Pairs in which only the first reading is positive.</summary>
    public long FirstOnly { get; }

    /// <summary>Pairs in which only the second reading is positive.</summary>
    public long SecondOnly { get; }

    /// <summary>Pairs in which neither reading is positive.</summary>
    public long Neither { get; }

    /// <summary>All pairs.</summary>
    public long Pairs => Both + FirstOnly + SecondOnly + Neither;

    /// <summary>Pairs in which the readings differ.</summary>
    public long Discordant => FirstOnly + SecondOnly;

    /// <summary>Positive first readings.</summary>
    public long FirstPositive => Both + FirstOnly;

    /// <summary>Positive second readings.</summary>
    public long SecondPositive => Both + SecondOnly;

    /// <summary>Negative first readings.</summary>
    public long FirstNegative => SecondOnly + Neither;

    /// <summary>Negative second readings.</summary>
    public long SecondNegative => FirstOnly + Neither;

    /// <summary>The counts, for debugging.</summary>
    /// <returns>Invariant text, for instance <c>40,9,6,45</c>.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Both},{FirstOnly},{SecondOnly},{Neither}");

    /// <summary>The same with the readings changing places.</summary>
    internal PairedCounts Swapped => new(Both, SecondOnly, FirstOnly, Neither);
}
