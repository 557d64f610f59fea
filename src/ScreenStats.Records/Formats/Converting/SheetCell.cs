using System.Globalization;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>The value of a cell as text: what a CSV export of the same sheet would hold, with dates in ISO 8601.</summary>
internal static class SheetCell
{
    private const double FirstOf2000In1900 = 36_526;
    private const double FirstOf2100In1900 = 73_051;
    private const double DaysBetweenSystems = 1_462;

    /// <summary>The text; null for an empty cell.</summary>
    /// <param name="value">What the cell holds.</param>
    /// <param name="format">Its number format.</param>
    public static string? Text(object? value, string? format) => value switch
    {
        null or DBNull => null,
        string text => text,
        bool yes => yes ? "true" : "false",
        double number => Number(number, format),
        int number => number.ToString(CultureInfo.InvariantCulture),
        DateTime moment => Moment(moment, TimeOfDay(format)),
        TimeSpan time => time.ToString("c", CultureInfo.InvariantCulture),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture),
    };

    /// <summary>A bare number in a column of dates: days since the beginning of the workbook's own count; other numbers as they are.</summary>
    public static string? Date(object? value, string? format, bool date1904)
    {
        if (value is not double number) return Text(value, format);
        var days = date1904 ? number + DaysBetweenSystems : number;
        return days is >= FirstOf2000In1900 and < FirstOf2100In1900 ? Moment(DateTime.FromOADate(days), timeOfDay: days != Math.Floor(days)) : Text(value, format);
    }

    /// <summary>True for a format that shows the time of day.</summary>
    private static bool TimeOfDay(string? format)
    {
        if (format is null) return false;
        var quoted = false;
        var bracket = false;
        for (var at = 0; at < format.Length; at++)
        {
            var c = format[at];
            if (c == '\\') at++;
            else if (c == '"') quoted = !quoted;
            else if (c is '[' or ']') bracket = c == '[';
            else if (!quoted && !bracket && c is 'h' or 'H' or 's' or 'S') return true;
        }

        return false;
    }

    private static string Moment(DateTime moment, bool timeOfDay)
    {
        // Serials hold a second to about a microsecond; what is left over is their rounding.
        var rounded = new DateTime((moment.Ticks + (TimeSpan.TicksPerSecond / 2)) / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond, DateTimeKind.Unspecified);
        var dateOnly = !timeOfDay && rounded.TimeOfDay == TimeSpan.Zero;
        return rounded.ToString(dateOnly ? "yyyy-MM-dd" : rounded.Second == 0 ? "yyyy-MM-dd'T'HH:mm" : "yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
    }

    private static string Number(double number, string? format)
    {
        if (number != Math.Floor(number) || Math.Abs(number) >= 1e15) return number.ToString("R", CultureInfo.InvariantCulture);
        var whole = ((long)number).ToString(CultureInfo.InvariantCulture);
        // A format of zeros shows 2 as 002: that is what whoever sees the sheet calls the value.
        return format is { Length: > 1 } && number >= 0 && format.All(c => c == '0') ? whole.PadLeft(format.Length, '0') : whole;
    }
}
