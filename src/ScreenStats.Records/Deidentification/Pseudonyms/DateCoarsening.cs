using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Writes a date coarser than it was.</summary>
internal static class DateCoarsening
{
    /// <summary>The coarser date; null where the text is no date that can be read.</summary>
    public static string? Of(ReadOnlySpan<byte> text, DateOrder? order, DatePrecision precision)
    {
        if (DateParser.Read(text, order, out var moment) != DateReading.Read) return null;
        var day = new DateOnly(2000, 1, 1).AddDays(moment.Day);
        if (precision == DatePrecision.Week) day = day.AddDays(-(((int)day.DayOfWeek + 6) % 7));
        return day.ToString(
            precision switch
            {
                DatePrecision.Month => "yyyy-MM",
                DatePrecision.Year => "yyyy",
                _ => "yyyy-MM-dd",
            },
            CultureInfo.InvariantCulture);
    }
}
