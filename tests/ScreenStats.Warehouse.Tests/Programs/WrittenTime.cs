using System.Globalization;

namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>A date or time as an export writes it, with the meaning that the program gives it: what a typed column must hold.</summary>
/// <param name="Local">The local date, with the time of day where there is one.</param>
/// <param name="DateOnly">True where there is no time of day.</param>
/// <param name="Offset">The written offset; null where there is none.</param>
internal readonly record struct WrittenTime(DateTime Local, bool DateOnly, TimeSpan? Offset)
{
    private static readonly string[] Local1 = ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"];
    private static readonly string[] WithOffset = ["yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz"];

    /// <summary>Reads it; null for a blank.</summary>
    public static WrittenTime? Of(string text)
    {
        if (text.Length == 0) return null;
        if (System.DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return new WrittenTime(date.ToDateTime(TimeOnly.MinValue), true, null);
        if (DateTime.TryParseExact(text, Local1, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local)) return new WrittenTime(local, false, null);
        var exact = DateTimeOffset.ParseExact(text.Replace("Z", "+00:00", StringComparison.Ordinal), WithOffset, CultureInfo.InvariantCulture);
        return new WrittenTime(exact.DateTime, false, exact.Offset);
    }

    /// <summary>
    /// The instant. A local time that clocks show twice is the first of the two, one that they skip has the offset before the change, as the
    /// reader of files takes it; without a time zone local time stands for UTC, as the contract of the views says.
    /// </summary>
    public DateTime Utc(TimeZoneInfo? zone)
    {
        var offset = Offset ?? (zone is null ? TimeSpan.Zero : zone.IsAmbiguousTime(Local) ? zone.GetAmbiguousTimeOffsets(Local).Max()
            : zone.IsInvalidTime(Local) ? zone.GetUtcOffset(Local.AddHours(-2)) : zone.GetUtcOffset(Local));
        return DateTime.SpecifyKind(Local - offset, DateTimeKind.Utc);
    }
}
