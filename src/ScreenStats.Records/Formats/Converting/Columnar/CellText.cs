using System.Globalization;
using System.Numerics;

namespace ScreenStats.Records.Formats.Converting.Columnar;

/// <summary>Typed values as the text that a CSV export of the same rows would hold: dates in ISO 8601, figures with a point, whatever the culture.</summary>
internal static class CellText
{
    private const int Longest = 40;
    private const long SecondsInDay = 86_400;
    private const double WholeBelow = 1e15;

    public static void Whole(Utf8RecordWriter writer, long value)
    {
        value.TryFormat(writer.Field(Longest), out var written, default, CultureInfo.InvariantCulture);
        writer.Wrote(written);
    }

    public static void Unsigned(Utf8RecordWriter writer, ulong value)
    {
        value.TryFormat(writer.Field(Longest), out var written, default, CultureInfo.InvariantCulture);
        writer.Wrote(written);
    }

    /// <summary>A whole one without a point, as a column of whole numbers with gaps is stored as fractions; one that is no number is a gap.</summary>
    public static void Fraction(Utf8RecordWriter writer, double value, bool single)
    {
        if (double.IsNaN(value))
        {
            writer.Blank();
            return;
        }

        if (value == Math.Floor(value) && Math.Abs(value) < WholeBelow)
        {
            Whole(writer, (long)value);
            return;
        }

        var to = writer.Field(Longest);
        int written;
        if (single) ((float)value).TryFormat(to, out written, "R", CultureInfo.InvariantCulture);
        else value.TryFormat(to, out written, "R", CultureInfo.InvariantCulture);
        writer.Wrote(written);
    }

    /// <summary>Without zeros at the end of its fraction: the same value is the same text whatever scale it was stored with.</summary>
    public static void Decimal(Utf8RecordWriter writer, BigInteger unscaled, int scale)
    {
        while (scale > 0)
        {
            var shorter = BigInteger.DivRem(unscaled, 10, out var last);
            if (!last.IsZero) break;
            unscaled = shorter;
            scale--;
        }

        var figures = BigInteger.Abs(unscaled).ToString(CultureInfo.InvariantCulture).PadLeft(scale + 1, '0');
        var text = (unscaled.Sign < 0 ? "-" : "") + (scale == 0 ? figures : $"{figures[..^scale]}.{figures[^scale..]}");
        writer.Text(System.Text.Encoding.UTF8.GetBytes(text));
    }

    /// <summary>A date; what lies outside of the calendar's years is no date, and is written so that nobody takes it for one.</summary>
    public static void Day(Utf8RecordWriter writer, int day)
    {
        var number = (long)day + DayOf1970;
        if (number < 0 || number > LastDay)
        {
            Outside(writer, "day"u8, day);
            return;
        }

        var to = writer.Field(Longest);
        writer.Wrote(Date(to, (int)number));
    }

    /// <summary>A moment as a clock showed it, or an instant with the offset of the program's time zone, in Z without one. Fractions of a second have no zeros at their end.</summary>
    /// <param name="writer">Takes it.</param>
    /// <param name="value">Units since the beginning of 1970.</param>
    /// <param name="digits">Digits of the fraction of a second that a unit is.</param>
    /// <param name="clock">The clock that an instant is read from; null for what a clock on the wall showed.</param>
    public static void Moment(Utf8RecordWriter writer, long value, int digits, ZoneClock? clock)
    {
        var unit = Unit(digits);
        var second = FloorDiv(value, unit);
        var fraction = value - (second * unit);
        if (!InCalendar(second))
        {
            Outside(writer, "moment"u8, value);
            return;
        }

        var offset = clock?.OffsetMinutes(second) ?? 0;
        second += offset * 60L;
        if (!InCalendar(second))
        {
            Outside(writer, "moment"u8, value);
            return;
        }

        var to = writer.Field(Longest);
        var days = FloorDiv(second, SecondsInDay);
        var at = Date(to, (int)(days + DayOf1970));
        to[at++] = (byte)'T';
        at += Clock(to[at..], second - (days * SecondsInDay), fraction, digits);
        if (clock is { HasZone: true }) at += Offset(to[at..], offset);
        else if (clock is not null) to[at++] = (byte)'Z';
        writer.Wrote(at);
    }

    public static void TimeOfDay(Utf8RecordWriter writer, long value, int digits)
    {
        var unit = Unit(digits);
        if (value < 0 || value / unit >= SecondsInDay)
        {
            Outside(writer, "time"u8, value);
            return;
        }

        writer.Wrote(Clock(writer.Field(Longest), value / unit, value % unit, digits));
    }

    public static void Identifier(Utf8RecordWriter writer, ReadOnlySpan<byte> value)
    {
        new Guid(value, bigEndian: true).TryFormat(writer.Field(Longest), out var written, "D");
        writer.Wrote(written);
    }

    private static readonly int DayOf1970 = new DateOnly(1970, 1, 1).DayNumber;
    private static readonly int LastDay = DateOnly.MaxValue.DayNumber;

    private static long Unit(int digits) => digits switch
    {
        3 => 1_000,
        6 => 1_000_000,
        _ => 1_000_000_000,
    };

    private static long FloorDiv(long value, long by) => value >= 0 ? value / by : -((-1 - value) / by) - 1;

    private static int Date(Span<byte> to, int number)
    {
        DateOnly.FromDayNumber(number).TryFormat(to, out var written, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        return written;
    }

    private static int Clock(Span<byte> to, long second, long fraction, int digits)
    {
        Two(to, second / 3600);
        to[2] = (byte)':';
        Two(to[3..], second / 60 % 60);
        to[5] = (byte)':';
        Two(to[6..], second % 60);
        if (fraction == 0) return 8;
        while (fraction % 10 == 0)
        {
            fraction /= 10;
            digits--;
        }

        to[8] = (byte)'.';
        for (var at = 8 + digits; at > 8; at--, fraction /= 10) to[at] = (byte)('0' + (fraction % 10));
        return 9 + digits;
    }

    private static int Offset(Span<byte> to, int minutes)
    {
        to[0] = minutes < 0 ? (byte)'-' : (byte)'+';
        Two(to[1..], Math.Abs(minutes) / 60);
        to[3] = (byte)':';
        Two(to[4..], Math.Abs(minutes) % 60);
        return 6;
    }

    private static bool InCalendar(long second) => FloorDiv(second, SecondsInDay) + DayOf1970 is >= 1 and var day && day < LastDay;

    private static void Two(Span<byte> to, long value)
    {
        to[0] = (byte)('0' + (value / 10));
        to[1] = (byte)('0' + (value % 10));
    }

    private static void Outside(Utf8RecordWriter writer, ReadOnlySpan<byte> what, long value)
    {
        var to = writer.Field(Longest);
        what.CopyTo(to);
        to[what.Length] = (byte)' ';
        value.TryFormat(to[(what.Length + 1)..], out var written, default, CultureInfo.InvariantCulture);
        writer.Wrote(what.Length + 1 + written);
    }
}
