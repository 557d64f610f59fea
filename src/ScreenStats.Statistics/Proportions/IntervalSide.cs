namespace ScreenStats.Statistics.Proportions;

/// <summary>Which limits of an interval hold its confidence.</summary>
public enum IntervalSide
{
    /// <summary>Both limits together, each with half of the rest.</summary>
    Both,

    /// <summary>The lower limit alone: the rate is at least this; the upper end is 1.</summary>
    Lower,

    /// <summary>The upper limit alone: the rate is at most this; the lower end is 0.</summary>
    Upper,
}
