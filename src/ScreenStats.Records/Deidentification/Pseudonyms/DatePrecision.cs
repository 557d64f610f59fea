namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>What is left of a date.</summary>
public enum DatePrecision
{
    /// <summary>The day, as 2026-01-05: the time of day goes.</summary>
    Day = 0,

    /// <summary>The Monday of the ISO week, as 2026-01-05: still a date that can be read.</summary>
    Week = 1,

    /// <summary>The month, as 2026-01.</summary>
    Month = 2,

    /// <summary>The year, as 2026: all that the Safe Harbor list leaves of a date.</summary>
    Year = 3,
}
