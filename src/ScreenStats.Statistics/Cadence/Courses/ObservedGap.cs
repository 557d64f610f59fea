namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>How often two consecutive screens of a person lay so many whole days apart.</summary>
public readonly record struct ObservedGap
{
    /// <summary>Makes a gap.</summary>
    /// <param name="days">Whole days from one screen to the next, 1 to 36,525; a second run on the same day is no screen of its own.</param>
    /// <param name="count">How many such gaps, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public ObservedGap(int days, long count)
    {
        if (days is < 1 or > 36_525) throw new ArgumentOutOfRangeException(nameof(days), days, "A gap must be whole days from 1 to 36,525.");
        Guard.NotNegative(count);
        Days = days;
        Count = count;
    }

    /// <summary>Whole days from one screen to the next.</summary>
    public int Days { get; }

    /// <summary>How many such gaps.</summary>
    public long Count { get; }
}
