namespace ScreenStats.Records.Understanding;

/// <summary>
/// Puts written times on one scale of seconds since 2000-01-01T00:00:00. A written offset is kept. Without one the
/// program's time zone gives it; a local time that the clocks skip is taken with the offset before the change, one that
/// they show twice is the first of the two. Without a time zone the scale is local time.
/// </summary>
internal sealed class TimeScale
{
    private const int FirstDay = -10_957;
    private const int Days = 60_000;
    private const short Unknown = short.MinValue;
    private const short Changes = short.MinValue + 1;
    private static readonly DateTime Origin = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    private readonly TimeZoneInfo? zone;
    private readonly short[] offsets = [];

    public TimeScale(TimeZoneInfo? zone)
    {
        this.zone = zone;
        if (zone is null) return;
        offsets = new short[Days];
        offsets.AsSpan().Fill(Unknown);
    }

    public bool HasZone => zone is not null;

    /// <summary>The instant of a written moment, and the offset that leads back to its local time.</summary>
    public long Instant(in WrittenMoment moment, out short offsetMinutes)
    {
        var local = (moment.Day * 86_400L) + moment.Second;
        offsetMinutes = moment.HasOffset ? moment.OffsetMinutes : zone is null ? (short)0 : ZoneOffset(moment.Day, moment.Second);
        return local - (offsetMinutes * 60L);
    }

    private short ZoneOffset(int day, int second)
    {
        var known = (uint)(day - FirstDay) < Days ? offsets[day - FirstDay] : Changes;
        if (known == Unknown) known = Learn(day);
        return known != Changes ? known : Slow(Origin.AddDays(day).AddSeconds(second));
    }

    private short Learn(int day)
    {
        var start = Slow(Origin.AddDays(day));
        var constant = true;
        for (var quarter = 1; quarter <= 96 && constant; quarter++) constant = Slow(Origin.AddDays(day).AddMinutes(15 * quarter)) == start;
        return offsets[day - FirstDay] = constant ? start : Changes;
    }

    private short Slow(DateTime local)
    {
        TimeSpan offset;
        if (zone!.IsAmbiguousTime(local)) offset = zone.GetAmbiguousTimeOffsets(local).Max();
        else if (zone.IsInvalidTime(local))
        {
            var before = local;
            while (zone.IsInvalidTime(before)) before = before.AddMinutes(-15);
            offset = zone.GetUtcOffset(before);
        }
        else offset = zone.GetUtcOffset(local);
        return (short)Math.Round(offset.TotalMinutes);
    }
}
