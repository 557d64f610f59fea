namespace ScreenStats.Counting.Rules;

/// <summary>How long a report may be on its way before a missing specimen counts as unverified.</summary>
public static class ReportingLag
{
    /// <summary>The share of reports that arrive within the lag.</summary>
    public const double Percentile = 0.95;

    /// <summary>
    /// The 95th percentile, by nearest rank, of the recorded times from collection to report: the value at rank ceil(0.95 n).
    /// </summary>
    /// <param name="seconds">Seconds from collection to report (whole days times 86,400 where either side has only a date), none negative. Sorted in place.</param>
    /// <returns>The lag in seconds; null where none is recorded.</returns>
    public static long? NearestRank(Span<long> seconds)
    {
        if (seconds.IsEmpty) return null;
        seconds.Sort();
        return seconds[Rank(seconds.Length) - 1];
    }

    /// <summary>The nearest rank of the 95th percentile, ceil(0.95 n).</summary>
    internal static int Rank(int count) => (int)(((95L * count) + 99) / 100);

    /// <summary>Seconds from collection to report.</summary>
    /// <param name="collected">When the specimen was collected.</param>
    /// <param name="reported">When it was reported.</param>
    /// <returns>Seconds, or whole days times 86,400 where either side has only a date; negative where the report comes first.</returns>
    public static long Seconds(Moment collected, Moment reported) => collected.WholeDaysTo(reported)
        ? (reported.DayNumber - collected.DayNumber) * Moment.SecondsPerDay
        : reported.Instant - collected.Instant;
}
