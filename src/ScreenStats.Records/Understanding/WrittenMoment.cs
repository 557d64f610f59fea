namespace ScreenStats.Records.Understanding;

/// <summary>A date or time as it is written, before it is put on a scale.</summary>
internal struct WrittenMoment
{
    /// <summary>Local day, counted from 2000-01-01.</summary>
    public int Day;

    /// <summary>Second of the local day; 0 where only a date is written.</summary>
    public int Second;

    public bool DateOnly;

    public bool HasOffset;

    /// <summary>Offset from UTC in minutes, where one is written.</summary>
    public short OffsetMinutes;
}
