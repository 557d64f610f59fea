namespace ScreenStats.Counting.Rules;

/// <summary>When something was collected: an instant with the local day it fell on, or only a local date.</summary>
/// <param name="Instant">
/// Seconds since 2000-01-01T00:00:00 in UTC, or in local time where neither time zone nor offsets are known. With only a date: the
/// local midnight that starts it.
/// </param>
/// <param name="OffsetMinutes">Minutes by which local time is ahead of the scale of <paramref name="Instant"/>.</param>
/// <param name="DateOnly">True where no time of day is recorded.</param>
public readonly record struct Moment(long Instant, int OffsetMinutes, bool DateOnly)
{
    /// <summary>Seconds in a day.</summary>
    public const long SecondsPerDay = 86_400;

    private static readonly DateTime Epoch = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    /// <summary>The local calendar day, as the number of days since 2000-01-01.</summary>
    public int DayNumber => (int)FloorDivide(Instant + (60L * OffsetMinutes), SecondsPerDay);

    /// <summary>The local calendar day.</summary>
    public DateOnly Day => DayOf(DayNumber);

    /// <summary>The local time, without its offset.</summary>
    public DateTime Local => Epoch.AddSeconds(Instant + (60L * OffsetMinutes));

    /// <summary>The last second of the local day.</summary>
    public long EndOfDay => ((DayNumber + 1L) * SecondsPerDay) - (60L * OffsetMinutes) - 1;

    /// <summary>A moment with a time of day.</summary>
    /// <param name="local">Local date and time; fractions of a second are cut off.</param>
    /// <param name="offset">Offset from UTC; zero where none is known.</param>
    /// <returns>The moment.</returns>
    public static Moment At(DateTime local, TimeSpan offset = default)
    {
        var minutes = (int)FloorDivide(offset.Ticks, TimeSpan.TicksPerMinute);
        return new(FloorDivide((local - Epoch).Ticks, TimeSpan.TicksPerSecond) - (60L * minutes), minutes, false);
    }

    /// <summary>A moment of which only the date is recorded.</summary>
    /// <param name="day">Local date.</param>
    /// <param name="offset">Offset from UTC at its midnight; zero where none is known.</param>
    /// <returns>The moment.</returns>
    public static Moment On(DateOnly day, TimeSpan offset = default) =>
        At(day.ToDateTime(TimeOnly.MinValue), offset) with { DateOnly = true };

    /// <summary>The calendar day with a number.</summary>
    /// <param name="dayNumber">Days since 2000-01-01.</param>
    /// <returns>The day.</returns>
    public static DateOnly DayOf(int dayNumber) => System.DateOnly.FromDateTime(Epoch).AddDays(dayNumber);

    /// <summary>True where only whole days can be compared: either side has only a date.</summary>
    /// <param name="other">The other moment.</param>
    /// <returns>True for whole days, false for seconds.</returns>
    public bool WholeDaysTo(Moment other) => DateOnly || other.DateOnly;

    /// <summary>
    /// Minutes from this moment to another, cut to whole minutes towards the past; the difference of the local days times 1,440 where either side has only a date.
    /// </summary>
    /// <param name="other">The other moment.</param>
    /// <returns>Minutes, negative where the other comes first.</returns>
    public int MinutesTo(Moment other) => WholeDaysTo(other)
        ? (other.DayNumber - DayNumber) * 1440
        : (int)FloorDivide(other.Instant - Instant, 60);

    /// <summary>
    /// True where the two cannot be told apart in time: the same second, or the same local day where either has only a date.
    /// </summary>
    /// <param name="other">The other moment.</param>
    /// <returns>True where neither is known to be first.</returns>
    public bool AtTheSameTimeAs(Moment other) => WholeDaysTo(other) ? DayNumber == other.DayNumber : Instant == other.Instant;

    /// <summary>How many of the moments, in order of their instants, are not later than an instant.</summary>
    internal static int CountUpTo(ReadOnlySpan<Moment> moments, long instant)
    {
        var (low, high) = (0, moments.Length);
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            if (moments[middle].Instant <= instant) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    private static long FloorDivide(long value, long by) => (value / by) - (value % by < 0 ? 1 : 0);
}
