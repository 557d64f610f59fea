namespace ScreenStats.Counting.Rules;

/// <summary>
/// Evidence that the clocks of two exports differ by whole hours: most specimens lie where they cannot follow up the run next to
/// them, and nearly all would if they were shifted alike. Evidence only: nothing is ever shifted.
/// </summary>
public static class ShiftedClockRule
{
    /// <summary>Fewest pairs that are judged.</summary>
    public const int FewestPairs = 10;

    /// <summary>Share of pairs that must fit after the shift.</summary>
    public const double FittingShare = 0.9;

    /// <summary>Most hours of a shift: offsets from UTC reach from -12 to +14.</summary>
    public const int MostHours = 14;

    /// <summary>Minutes by which the confirmatory swab may be taken before the screening swab of the same visit.</summary>
    public const int MinutesBefore = 30;

    /// <summary>Hours by which specimens would have to be moved so that they fit.</summary>
    /// <remarks>
    /// A specimen fits a run from <see cref="MinutesBefore"/> before to <paramref name="withinMinutes"/> after it. Judged where more than half
    /// of at least <see cref="FewestPairs"/> pairs do not fit; found where a shift of at most <see cref="MostHours"/> makes at least
    /// <see cref="FittingShare"/> of them fit. False alarms: if clocks agree and one specimen in ten is late, more than half of ten are with a
    /// chance of 1.5e-4, of thirty with 4e-9; a laboratory that is always late looks the same as a clock that is.
    /// </remarks>
    /// <param name="minutes">For each run due for follow-up the minutes to the nearest specimen of its person, both with a time of day.</param>
    /// <param name="withinMinutes">Minutes after a run within which it is to be followed up, positive.</param>
    /// <returns>The hours, those next to 0 of several; negative where specimens would have to be moved earlier; null where there is no evidence.</returns>
    public static int? Hours(ReadOnlySpan<int> minutes, int withinMinutes)
    {
        if (minutes.Length < FewestPairs || 2 * Fitting(minutes, 0, withinMinutes) >= minutes.Length) return null;
        for (var hours = 1; hours <= MostHours; hours++)
        {
            var (later, earlier) = (Fitting(minutes, hours, withinMinutes), Fitting(minutes, -hours, withinMinutes));
            if (Math.Max(later, earlier) >= FittingShare * minutes.Length) return later >= earlier ? hours : -hours;
        }

        return null;
    }

    private static int Fitting(ReadOnlySpan<int> minutes, int hours, int withinMinutes)
    {
        var fitting = 0;
        foreach (var apart in minutes)
        {
            if (apart + (60 * hours) >= -MinutesBefore && apart + (60 * hours) <= withinMinutes) fitting++;
        }

        return fitting;
    }
}
