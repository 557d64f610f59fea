namespace ScreenStats.Statistics.Economics.Yield.Rules;

/// <summary>What a period of screening found.</summary>
public readonly record struct YieldPeriod
{
    /// <summary>Makes a period.</summary>
    /// <param name="found">What the yield counts, such as confirmed positives; 0 to <paramref name="screens"/>.</param>
    /// <param name="screens">What it is counted among; 0 where nobody was screened.</param>
    /// <param name="days">The length of the period, days above 0 and at most a billion.</param>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a length outside its domain.</exception>
    public YieldPeriod(long found, long screens, double days)
    {
        if (screens < 0) throw new ArgumentOutOfRangeException(nameof(screens), screens, "The number of screens must be 0 or more.");
        if (found < 0 || found > screens) throw new ArgumentOutOfRangeException(nameof(found), found, "The number found must lie between 0 and the number of screens.");
        Guard.Days(days);
        if (days == 0) throw new ArgumentOutOfRangeException(nameof(days), days, "A period must last longer than 0 days.");
        Found = found;
        Screens = screens;
        Days = days;
    }

    /// <summary>What the yield counts.</summary>
    public long Found { get; }

    /// <summary>What it is counted among.</summary>
    public long Screens { get; }

    /// <summary>The length of the period in days.</summary>
    public double Days { get; }
}
