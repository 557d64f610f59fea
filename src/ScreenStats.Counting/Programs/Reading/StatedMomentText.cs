using System.Globalization;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads a moment written in ISO 8601.</summary>
internal static class StatedMomentText
{
    private static readonly string[] LocalFormats =
        ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd HH:mm", "yyyy-MM-dd HH:mm:ss"];

    private static readonly string[] OffsetFormats =
    [
        "yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd HH:mmzzz", "yyyy-MM-dd HH:mm:sszzz",
    ];

    public static StatedMoment? Read(string text)
    {
        text = text.Trim();
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return new(day.ToDateTime(new TimeOnly(23, 59, 59)), null);
        if (DateTime.TryParseExact(text, LocalFormats, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
            return new(local, null);
        if (text.EndsWith('Z')) text = text[..^1] + "+00:00";
        return DateTimeOffset.TryParseExact(text, OffsetFormats, CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment)
            ? new(moment.DateTime, moment.Offset)
            : null;
    }
}
