namespace ScreenStats.Statistics.LatentClass;

/// <summary>The results of two tests on the same people of one population, none of which is taken as the truth.</summary>
public readonly record struct TwoTestCounts
{
    /// <summary>Makes the counts.</summary>
    /// <param name="bothPositive">Positive by both tests.</param>
    /// <param name="firstOnly">Positive by the first test only.</param>
    /// <param name="secondOnly">Positive by the second test only.</param>
    /// <param name="bothNegative">Negative by both tests.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0.</exception>
    public TwoTestCounts(long bothPositive, long firstOnly, long secondOnly, long bothNegative)
    {
        Guard.NotNegative(bothPositive);
        Guard.NotNegative(firstOnly);
        Guard.NotNegative(secondOnly);
        Guard.NotNegative(bothNegative);
        BothPositive = bothPositive;
        FirstOnly = firstOnly;
        SecondOnly = secondOnly;
        BothNegative = bothNegative;
    }

    /// <summary>Positive by both tests.</summary>
    public long BothPositive { get; }

    /// <summary>Positive by the first test only.</summary>
    public long FirstOnly { get; }

    /// <summary>Positive by the second test only.</summary>
    public long SecondOnly { get; }

    /// <summary>Negative by both tests.</summary>
    public long BothNegative { get; }

    /// <summary>Everybody.</summary>
    public long Total => BothPositive + FirstOnly + SecondOnly + BothNegative;
}
