using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Understanding;

/// <summary>What the values of one column say about the order of day and month.</summary>
internal sealed class DateEvidence(bool isDate)
{
    /// <summary>True for a column of dates.</summary>
    public bool IsDate { get; } = isDate;

    /// <summary>Dates that need no order: ISO 8601, or day and month the same.</summary>
    public long Settled { get; private set; }

    /// <summary>Dates that only day-first can be.</summary>
    public long DayFirst { get; private set; }

    /// <summary>Dates that only month-first can be.</summary>
    public long MonthFirst { get; private set; }

    /// <summary>Dates that would differ.</summary>
    public long Either { get; private set; }

    public long FirstDayFirst { get; private set; } = long.MaxValue;

    public long FirstMonthFirst { get; private set; } = long.MaxValue;

    /// <summary>The places of the first two dates that would differ.</summary>
    public (long First, long Second) FirstEither { get; private set; } = (long.MaxValue, long.MaxValue);

    /// <summary>Takes a value.</summary>
    public void Look(ReadOnlySpan<byte> text, long place, bool twoDigitYears = false)
    {
        if (text.IsEmpty) return;
        var reading = DateParser.Read(text, null, out _, twoDigitYears);
        if (reading == DateReading.Read) Settled++;
        if (reading != DateReading.OrderUnknown) return;
        DateParser.TryParts(text, out var first, out var second, out var year, out _, twoDigitYears);
        var dayFirst = DateParser.DayNumber(year, second, first) != int.MinValue;
        var monthFirst = DateParser.DayNumber(year, first, second) != int.MinValue;
        if (dayFirst && monthFirst)
        {
            Either++;
            Remember(place);
        }
        else if (dayFirst)
        {
            DayFirst++;
            FirstDayFirst = Math.Min(FirstDayFirst, place);
        }
        else
        {
            MonthFirst++;
            FirstMonthFirst = Math.Min(FirstMonthFirst, place);
        }
    }

    /// <summary>Adds what another thread saw.</summary>
    public void Add(DateEvidence other)
    {
        Add((other.Settled, other.DayFirst, other.MonthFirst, other.Either), (other.FirstDayFirst, other.FirstMonthFirst, other.FirstEither.First, other.FirstEither.Second));
    }

    /// <summary>Adds counts and first places, as the properties have them.</summary>
    public void Add((long Settled, long DayFirst, long MonthFirst, long Either) dates, (long DayFirst, long MonthFirst, long Either, long SecondEither) places)
    {
        Settled += dates.Settled;
        DayFirst += dates.DayFirst;
        MonthFirst += dates.MonthFirst;
        Either += dates.Either;
        FirstDayFirst = Math.Min(FirstDayFirst, places.DayFirst);
        FirstMonthFirst = Math.Min(FirstMonthFirst, places.MonthFirst);
        Remember(places.Either);
        Remember(places.SecondEither);
    }

    /// <summary>
    /// The order, where the whole column leaves no doubt. Where more than nine in ten dates need none, the few that
    /// leave a doubt are not worth the column: ISO is taken, and they are set aside.
    /// </summary>
    public DateOrder? Order()
    {
        if (DayFirst + MonthFirst + Either == 0) return null;
        if (DayFirst > 0 && MonthFirst == 0) return DateOrder.DayFirst;
        if (MonthFirst > 0 && DayFirst == 0) return DateOrder.MonthFirst;
        return Settled > 9 * (DayFirst + MonthFirst + Either) ? DateOrder.Iso : null;
    }

    private void Remember(long place)
    {
        if (place < FirstEither.First) FirstEither = (place, FirstEither.First);
        else if (place < FirstEither.Second) FirstEither = (FirstEither.First, place);
    }
}
