namespace ScreenStats.Counting.Rules;

/// <summary>The days in which a program took place, told from the days of its rows: a few rows far from all others are errors of the year or of a clock.</summary>
public static class ProgramSpanRule
{
    /// <summary>Days without a row that cut off a part of at most <see cref="SmallShare"/>.</summary>
    public const int LongGap = 60;

    /// <summary>Days without a row that cut off a part of at most <see cref="ModestShare"/>: a year mistyped in January leaves about that.</summary>
    public const int LongerGap = 300;

    /// <summary>Days without a row that cut off the smaller part: no program stops for two years.</summary>
    public const int LongestGap = 730;

    /// <summary>Largest share of rows beyond <see cref="LongGap"/>.</summary>
    public const double SmallShare = 0.01;

    /// <summary>Largest share of rows beyond <see cref="LongerGap"/>.</summary>
    public const double ModestShare = 0.1;

    /// <summary>First and last day of the program.</summary>
    /// <remarks>
    /// From either end the outermost rows are cut off at the innermost gap whose length and share say that they stand apart. A
    /// program that pauses over a summer keeps both halves; one that restarts for one day after 60 days of 100 without a row may
    /// be cut wrongly, which is why the rows stay counted and the finding only says where to look.
    /// </remarks>
    /// <param name="days">Days with rows in ascending order, and the rows of each, positive; at least one.</param>
    /// <returns>The days, both included.</returns>
    public static (int First, int Last) Of(IReadOnlyList<(int Day, long Rows)> days)
    {
        ArgumentNullException.ThrowIfNull(days);
        if (days.Count == 0) throw new ArgumentOutOfRangeException(nameof(days), days.Count, "At least one day is needed.");
        long all = 0;
        for (var i = 0; i < days.Count; i++) all += days[i].Rows;
        var (first, last) = (0, days.Count - 1);
        long before = 0;
        for (var i = 1; i < days.Count; i++)
        {
            before += days[i - 1].Rows;
            if (StandsApart(days[i].Day - days[i - 1].Day, (double)before / all)) first = i;
        }

        long after = 0;
        for (var i = days.Count - 1; i > first; i--)
        {
            after += days[i].Rows;
            if (StandsApart(days[i].Day - days[i - 1].Day, (double)after / all)) last = i - 1;
        }

        return (days[first].Day, days[last].Day);
    }

    private static bool StandsApart(int gap, double share) =>
        (gap > LongGap && share <= SmallShare) || (gap > LongerGap && share <= ModestShare) || (gap > LongestGap && share < 0.5);
}
