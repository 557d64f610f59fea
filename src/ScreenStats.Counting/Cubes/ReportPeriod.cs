namespace ScreenStats.Counting.Cubes;

/// <summary>Length of a reporting period.</summary>
public enum ReportPeriod
{
    /// <summary>One calendar day.</summary>
    Day = 0,

    /// <summary>One ISO week, from Monday.</summary>
    Week = 1,

    /// <summary>One calendar month.</summary>
    Month = 2,
}
