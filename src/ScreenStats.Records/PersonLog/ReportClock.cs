using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Records.PersonLog;

/// <summary>Makes the clock by which runs turn from pending to unverified, day by day as it was known then.</summary>
internal static class ReportClock
{
    /// <param name="specimens">The confirmatory export.</param>
    /// <param name="settings">The program file.</param>
    /// <param name="firstDay">First day of a counted run; after the last where there is none.</param>
    /// <param name="lastDay">Last day of a counted run.</param>
    public static VerificationClock Of(SpecimenIndex specimens, ProgramSettings settings, int firstDay, int lastDay)
    {
        if (!specimens.HasExport || firstDay > lastDay) return VerificationClock.None;
        var zone = settings.TimeZone is { } name ? TimeZoneInfo.FindSystemTimeZoneById(name) : null;
        var reports = new List<(int Day, long Seconds)>();
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            if (SpecimenIndex.Report(row) is { } report) reports.Add((report.DayNumber, ReportingLag.Seconds(SpecimenIndex.Time(row), report)));
        }

        // To the day on which the time of the last run is over.
        var lag = settings.Policy.ReportLagHours * 3600;
        foreach (var (_, seconds) in reports) lag = Math.Max(lag, seconds);
        var days = lastDay - firstDay + 4L + FollowUpWindow.OfFollowUp(settings.Policy).WithinDays + (long)(lag / Moment.SecondsPerDay);
        var latest = (RunCounter.LatestInstant / Moment.SecondsPerDay) - firstDay;
        var ends = new long[Math.Clamp(days, 1, Math.Max(1, latest))];
        var offsets = zone is null ? Offsets(specimens, firstDay, ends.Length) : [];
        for (var day = 0; day < ends.Length; day++)
        {
            var local = Moment.DayOf(firstDay + day).ToDateTime(new TimeOnly(23, 59, 59));
            ends[day] = Moment.At(local, zone?.GetUtcOffset(local) ?? TimeSpan.FromMinutes(offsets[day])).Instant;
        }

        return VerificationClock.Of(firstDay, ends, reports, (long)Math.Floor(settings.Policy.ReportLagHours * 3600));
    }

    // Without a time zone the offset of the latest specimen known by then, as in AsOf for the whole of the data.
    private static int[] Offsets(SpecimenIndex specimens, int firstDay, int days)
    {
        var offsets = new int[days];
        var order = Enumerable.Range(0, specimens.Rows.Length).ToArray();
        Array.Sort((int[])specimens.KnownDays.Clone(), order);
        var next = 0;
        Moment? latest = null;
        Moment? latestReport = null;
        for (var day = 0; day < days; day++)
        {
            for (; next < order.Length && specimens.KnownDays[order[next]] <= firstDay + day; next++)
            {
                ref readonly var row = ref specimens.Rows[order[next]];
                latest = AsOf.Later(latest, SpecimenIndex.Time(row));
                if (SpecimenIndex.Report(row) is { } report) latestReport = AsOf.Later(latestReport, report);
            }

            offsets[day] = (latestReport ?? latest)?.OffsetMinutes ?? 0;
        }

        return offsets;
    }
}
