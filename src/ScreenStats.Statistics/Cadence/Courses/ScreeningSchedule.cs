using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>When the screens of a person fall due, and how many of them are taken.</summary>
/// <remarks>
/// An infection falls anywhere in time with the same chance, whatever the schedule: between two screens every so many days, at any time of
/// the week, into an observed gap with a chance in proportion to its length.
/// </remarks>
public sealed record ScreeningSchedule
{
    /// <summary>The shortest time between two due screens: an hour, in days.</summary>
    public const double ShortestInterval = 1.0 / 24;

    private ScreeningSchedule(double periodDays, ImmutableArray<double> at, ImmutableArray<ObservedGap> gaps)
    {
        PeriodDays = periodDays;
        At = at;
        Gaps = gaps;
    }

    /// <summary>No screens.</summary>
    public static ScreeningSchedule Never { get; } = new(0, [], []);

    /// <summary>The chance that a due screen is taken, in [0, 1], each independently of the others.</summary>
    public double Participation { get; init; } = 1;

    /// <summary>The share of people who never take part, in [0, 1]; the participation is that of the others.</summary>
    public double NeverTakePart { get; init; }

    /// <summary>The days after which the pattern of due screens repeats; 0 where it does not.</summary>
    public double PeriodDays { get; }

    /// <summary>When within a period screens fall due, in days from its beginning, rising.</summary>
    public ImmutableArray<double> At { get; }

    /// <summary>Observed gaps, from the shortest; empty where the pattern repeats.</summary>
    public ImmutableArray<ObservedGap> Gaps { get; }

    /// <summary>Due screens of a person in a day, on average.</summary>
    public double DuePerDay => PeriodDays > 0 ? At.Length / PeriodDays
        : Gaps.IsEmpty ? 0 : Gaps.Sum(gap => (double)gap.Count) / Gaps.Sum(gap => (double)gap.Count * gap.Days);

    /// <summary>Taken screens of a person in a day, on average over those who take part and those who never do.</summary>
    public double TakenPerDay => DuePerDay * Participation * (1 - NeverTakePart);

    /// <summary>A screen every so many days.</summary>
    /// <param name="days">From an hour (<see cref="ShortestInterval"/>) to a billion days.</param>
    /// <returns>The schedule.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number outside this.</exception>
    public static ScreeningSchedule Every(double days)
    {
        if (!(days is >= ShortestInterval and <= 1e9))
            throw new ArgumentOutOfRangeException(nameof(days), days, "The days between screens must be a number from an hour (1/24) to a billion.");
        return new ScreeningSchedule(days, [0], []);
    }

    /// <summary>Screens on fixed days of the week, at the same time of each of these days.</summary>
    /// <param name="weekdays">The days; one at least. The same day twice counts once.</param>
    /// <returns>The schedule. Which time of the day it is makes no difference, since infections fall on any time of the week alike.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No day, or one that is no day of the week.</exception>
    public static ScreeningSchedule OnWeekdays(IReadOnlyCollection<DayOfWeek> weekdays)
    {
        ArgumentNullException.ThrowIfNull(weekdays);
        foreach (var day in weekdays)
        {
            if (day is < DayOfWeek.Sunday or > DayOfWeek.Saturday) throw new ArgumentOutOfRangeException(nameof(weekdays), day, "Not a day of the week.");
        }

        return Repeating(7, [.. weekdays.Distinct().Select(day => (((double)day + 6) % 7) + 0.5).Order()]);
    }

    /// <summary>Screens at fixed times of a pattern that repeats, as a shift plan does.</summary>
    /// <param name="periodDays">Days after which the pattern repeats, from an hour to a billion.</param>
    /// <param name="at">Days from its beginning at which screens fall due, in [0, period), rising, an hour or more apart, over the end too; 1 to 1,000 of them.</param>
    /// <returns>The schedule.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ScreeningSchedule Repeating(double periodDays, ImmutableArray<double> at)
    {
        if (!(periodDays is >= ShortestInterval and <= 1e9))
            throw new ArgumentOutOfRangeException(nameof(periodDays), periodDays, "The period must be a number of days from an hour (1/24) to a billion.");
        if (at.IsDefaultOrEmpty || at.Length > 1000)
            throw new ArgumentOutOfRangeException(nameof(at), at.IsDefault ? 0 : at.Length, "A pattern must hold 1 to 1,000 screens; use Never for none.");
        for (var i = 0; i < at.Length; i++)
        {
            var next = i + 1 < at.Length ? at[i + 1] : at[0] + periodDays;
            if (!(at[i] >= 0 && at[i] < periodDays) || !(next - at[i] >= ShortestInterval * (1 - 1e-9)))
                throw new ArgumentOutOfRangeException(nameof(at), at[i], "Screens of a pattern must lie within its period, rise, and be an hour or more apart.");
        }

        return new ScreeningSchedule(periodDays, at, []);
    }

    /// <summary>Screens with the gaps seen in the data: each gap is drawn from them, independently of the one before.</summary>
    /// <param name="gaps">The gaps, in any order; those with a count of 0 count for nothing.</param>
    /// <returns>The schedule; <see cref="Never"/> where there is no gap.</returns>
    public static ScreeningSchedule Observed(ImmutableArray<ObservedGap> gaps)
    {
        if (gaps.IsDefault) throw new ArgumentNullException(nameof(gaps));
        ImmutableArray<ObservedGap> kept =
        [
            .. gaps.Where(gap => gap.Count > 0).GroupBy(gap => gap.Days).OrderBy(same => same.Key)
                .Select(same => new ObservedGap(same.Key, same.Sum(gap => gap.Count))),
        ];
        return kept.IsEmpty ? Never : new ScreeningSchedule(0, [], kept);
    }

    /// <summary>Whether two schedules have the same screens fall due and taken.</summary>
    /// <param name="other">Another schedule, or null.</param>
    /// <returns>True where all figures are the same.</returns>
    public bool Equals(ScreeningSchedule? other) =>
        other is not null && PeriodDays.Equals(other.PeriodDays) && Participation.Equals(other.Participation) && NeverTakePart.Equals(other.NeverTakePart)
        && At.AsSpan().SequenceEqual(other.At.AsSpan()) && Gaps.AsSpan().SequenceEqual(other.Gaps.AsSpan());

    /// <summary>A hash of all figures.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        hash.Add(PeriodDays);
        hash.Add(Participation);
        hash.Add(NeverTakePart);
        foreach (var at in At) hash.Add(at);
        foreach (var gap in Gaps) hash.Add(gap);
        return hash.ToHashCode();
    }

    internal void Check()
    {
        Guard.Probability(Participation);
        Guard.Probability(NeverTakePart);
    }
}
