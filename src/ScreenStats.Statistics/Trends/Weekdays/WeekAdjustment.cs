namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>How weeks, which rise and fall, are kept out of the comparison of weekdays.</summary>
public enum WeekAdjustment
{
    /// <summary>Given the events of each week, where it has whole counts and at most 60 events or at most 60 trials without one; else by a term for the week.</summary>
    Automatic,

    /// <summary>Given the events of each week, which must have whole counts and at most 1,000 events or trials without one.</summary>
    Conditional,

    /// <summary>A term for each week. With few events a week it makes the weekdays differ more than they do.</summary>
    WeekTerms,
}
