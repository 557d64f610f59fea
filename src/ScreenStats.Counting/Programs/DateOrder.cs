namespace ScreenStats.Counting.Programs;

/// <summary>The order of day, month and year in a date.</summary>
public enum DateOrder
{
    /// <summary>Year, month, day as in ISO 8601.</summary>
    Iso = 0,

    /// <summary>Day, month, year.</summary>
    DayFirst = 1,

    /// <summary>Month, day, year.</summary>
    MonthFirst = 2,
}
