using ScreenStats.Counting.Rules;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Local time of instants. Without a time zone instants are local times.</summary>
internal sealed class LocalTimes(TimeZoneInfo? zone, TimeScale scale)
{
    private static readonly DateTime Origin = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
    private readonly Dictionary<int, (long Start, long End, short? Offset)> days = [];

    /// <summary>Minutes by which local time is ahead at an instant on a local day.</summary>
    public short Offset(int day, long instant) => zone is null ? (short)0 : Of(day).Offset ?? OffsetAt(instant);

    /// <summary>The local midnight that starts a day, and its offset.</summary>
    public long Midnight(int day, out short offset) => scale.Instant(new WrittenMoment { Day = day }, out offset);

    /// <summary>True where an instant lies on a local day.</summary>
    public bool IsOn(int day, long instant)
    {
        var (start, end, _) = Of(day);
        return instant >= start && instant < end;
    }

    /// <summary>Minutes by which local time is ahead at an instant.</summary>
    public short OffsetAt(long instant) => zone is null ? (short)0 : (short)Math.Round(zone.GetUtcOffset(Origin.AddSeconds(instant)).TotalMinutes);

    private (long Start, long End, short? Offset) Of(int day)
    {
        if (days.TryGetValue(day, out var known)) return known;
        var start = Start(day);
        var end = Start(day + 1);
        var offset = OffsetAt(start);
        var constant = end - start == Moment.SecondsPerDay && OffsetAt(end - 1) == offset;
        return days[day] = (start, end, constant ? offset : null);
    }

    // The first instant of a local day: where clocks skip midnight, the instant at which they do.
    private long Start(int day)
    {
        var midnight = Midnight(day, out _);
        if (zone is null) return midnight;
        while (DayAt(midnight) < day) midnight += 900;
        while (DayAt(midnight - 900) >= day) midnight -= 900;
        return midnight;
    }

    private int DayAt(long instant) => new Moment(instant, OffsetAt(instant), false).DayNumber;
}
