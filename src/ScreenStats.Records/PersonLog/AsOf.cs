using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Records.PersonLog;

/// <summary>The moment up to which the data are complete, on the scale of the rows.</summary>
/// <param name="Instant">Seconds since 2000-01-01.</param>
/// <param name="Local">The same as local time.</param>
internal readonly record struct AsOf(long Instant, DateTime Local)
{
    /// <summary>
    /// The moment stated on the command line; else the program file's; else the latest report; else the latest collection among the
    /// counted specimens (the end of that day where only a date is recorded).
    /// </summary>
    /// <returns>The moment; null where nothing is stated and there is no specimen.</returns>
    public static AsOf? Of(StatedMoment? stated, ProgramSettings settings, SpecimenIndex specimens)
    {
        Moment? latest = null;
        Moment? latestReport = null;
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            latest = Later(latest, SpecimenIndex.Time(row));
            if (SpecimenIndex.Report(row) is { } report) latestReport = Later(latestReport, report);
        }

        latest = latestReport ?? latest;
        if ((stated ?? settings.DataAsOf) is not { } moment)
        {
            return latest is { } found ? new(End(found), new Moment(End(found), found.OffsetMinutes, false).Local) : null;
        }

        var offset = moment.Offset ?? OffsetOf(moment.Local, settings.TimeZone, latest?.OffsetMinutes ?? 0);
        return new(Moment.At(moment.Local, offset).Instant, moment.Local);
    }

    /// <summary>The later of two moments; of two at one time the one further east, so that the order of the rows decides nothing.</summary>
    internal static Moment Later(Moment? known, Moment other) =>
        known is { } found && (End(found) != End(other) ? End(found) > End(other) : found.OffsetMinutes >= other.OffsetMinutes) ? found : other;

    internal static long End(Moment moment) => moment.DateOnly ? moment.EndOfDay : moment.Instant;

    // Without a time zone the rows are local times without offsets, or all have offsets; then the latest one's is the best there is.
    private static TimeSpan OffsetOf(DateTime local, string? timeZone, int offsetMinutes) => timeZone is null
        ? TimeSpan.FromMinutes(offsetMinutes)
        : TimeZoneInfo.FindSystemTimeZoneById(timeZone).GetUtcOffset(DateTime.SpecifyKind(local, DateTimeKind.Unspecified));
}
