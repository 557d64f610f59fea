namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>
/// What the clocks of the program's time zone showed at an instant. An instant has no offset that somebody wrote down, so its day is that
/// of the program; without a time zone it is the day in UTC.
/// </summary>
/// <param name="zone">The program's time zone; null for none.</param>
internal sealed class ZoneClock(TimeZoneInfo? zone)
{
    private const int FirstDay = -25_567;
    private const int Days = 73_049;
    private const int QuartersInDay = 96;
    private const short Unknown = short.MinValue, Changes = short.MinValue + 1;
    private const long SecondsInDay = 86_400;
    private readonly short[] known = Filled(zone is null ? 0 : Days);

    /// <summary>False where there is no time zone.</summary>
    public bool HasZone => zone is not null;

    /// <summary>Minutes from UTC to local time.</summary>
    /// <param name="second">Seconds since 1970-01-01T00:00:00Z, within the calendar's years.</param>
    public int OffsetMinutes(long second)
    {
        if (zone is null) return 0;
        var day = second >= 0 ? second / SecondsInDay : -((-1 - second) / SecondsInDay) - 1;
        if (day is < FirstDay or >= FirstDay + Days) return At(second);
        ref var offset = ref known[day - FirstDay];
        if (offset == Unknown) offset = Learn(day);
        return offset == Changes ? At(second) : offset;
    }

    private short Learn(long day)
    {
        var start = At(day * SecondsInDay);
        for (var quarter = 1; quarter <= QuartersInDay; quarter++)
        {
            if (At((day * SecondsInDay) + (quarter * SecondsInDay / QuartersInDay)) != start) return Changes;
        }

        return start;
    }

    private short At(long second) => (short)Math.Round(zone!.GetUtcOffset(DateTime.UnixEpoch.AddSeconds(second)).TotalMinutes);

    private static short[] Filled(int days)
    {
        var all = new short[days];
        all.AsSpan().Fill(Unknown);
        return all;
    }
}
