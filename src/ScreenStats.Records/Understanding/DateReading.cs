namespace ScreenStats.Records.Understanding;

/// <summary>What came of reading a date.</summary>
internal enum DateReading
{
    Read = 0,

    /// <summary>Not a date, or none that exists.</summary>
    Unreadable = 1,

    /// <summary>Day, month and year in figures, but which of the first two is the day has not been settled.</summary>
    OrderUnknown = 2,

    /// <summary>Day and month, and a year of two figures, which could be of any century and even be no year.</summary>
    TwoDigitYear = 3,
}
