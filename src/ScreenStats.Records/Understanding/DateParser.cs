using System.Runtime.CompilerServices;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// Reads dates and times from UTF-8. ISO 8601 always: <c>2026-01-05</c>, <c>20260105</c>, with <c>T</c> or a space a time
/// with or without seconds and fractions (cut off), with or without <c>Z</c> or an offset. With a settled order also
/// <c>5.1.2026</c>, <c>05/01/2026 14:30</c>, <c>1/5/2026 2:30 PM</c>. Years have four
/// figures, or two where that is stated: then they are 2000 to 2099.
/// </summary>
internal static class DateParser
{
    private static readonly int[] DaysBefore = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

    /// <summary>Day of a date counted from 2000-01-01; int.MinValue where there is no such date.</summary>
    public static int DayNumber(int year, int month, int day)
    {
        if (year is < 1900 or > 2199 || (uint)(month - 1) > 11 || day < 1) return int.MinValue;
        var leap = (year & 3) == 0 && (year % 100 != 0 || year % 400 == 0);
        var length = month == 2 ? (leap ? 29 : 28) : 30 + ((month + (month >> 3)) & 1);
        if (day > length) return int.MinValue;
        var past = year - 1;
        var days = (past * 365) + (past >> 2) - (past / 100) + (past / 400) + DaysBefore[month - 1] + day - 1;
        if (leap && month > 2) days++;
        return days - 730_119;
    }

    public static DateReading Read(ReadOnlySpan<byte> text, DateOrder? order, out WrittenMoment moment, bool twoDigitYears = false)
    {
        moment = default;
        if (text.Length >= 10 && text[4] == (byte)'-' && text[7] == (byte)'-')
        {
            if (!Four(text, out var year) || !Two(text, 5, out var month) || !Two(text, 8, out var day)) return DateReading.Unreadable;
            moment.Day = DayNumber(year, month, day);
            if (moment.Day == int.MinValue) return DateReading.Unreadable;
            return Time(text[10..], ref moment);
        }

        if (text.Length >= 8 && Four(text, out var basicYear) && Two(text, 4, out var basicMonth) && Two(text, 6, out var basicDay)
            && (text.Length == 8 || text[8] is (byte)'T' or (byte)'t' or (byte)' '))
        {
            moment.Day = DayNumber(basicYear, basicMonth, basicDay);
            if (moment.Day == int.MinValue) return DateReading.Unreadable;
            return Time(text[8..], ref moment);
        }

        return Figures(text, order, ref moment, twoDigitYears);
    }

    /// <summary>The two parts before the year of a date in figures, as written: evidence for their order.</summary>
    public static bool TryParts(ReadOnlySpan<byte> text, out int first, out int second, out int year, out int length, bool twoDigitYears = false)
    {
        length = 0;
        second = year = 0;
        if (!Number(text, ref length, 2, out first) || length == text.Length) return false;
        var separator = text[length];
        if (separator is not ((byte)'/' or (byte)'.' or (byte)'-')) return false;
        length++;
        if (!Number(text, ref length, 2, out second) || length == text.Length || text[length] != separator) return false;
        length++;
        var from = length;
        if (!Number(text, ref length, 4, out year)) return false;
        if (length - from == 4) return true;
        if (length - from != 2 || !twoDigitYears) return false;
        year += 2000;
        return true;
    }

    private static DateReading Figures(ReadOnlySpan<byte> text, DateOrder? order, ref WrittenMoment moment, bool twoDigitYears)
    {
        if (!TryParts(text, out var first, out var second, out var year, out var length, twoDigitYears))
            return !twoDigitYears && TryParts(text, out _, out _, out _, out _, twoDigitYears: true) ? DateReading.TwoDigitYear : DateReading.Unreadable;
        if (order == DateOrder.Iso) return DateReading.Unreadable;
        if (order is null && first != second)
        {
            return DayNumber(year, second, first) == int.MinValue && DayNumber(year, first, second) == int.MinValue
                ? DateReading.Unreadable
                : DateReading.OrderUnknown;
        }

        moment.Day = order == DateOrder.MonthFirst ? DayNumber(year, first, second) : DayNumber(year, second, first);
        if (moment.Day == int.MinValue) return DateReading.Unreadable;
        return Time(text[length..], ref moment);
    }

    private static DateReading Time(ReadOnlySpan<byte> text, ref WrittenMoment moment)
    {
        if (text.IsEmpty)
        {
            moment.DateOnly = true;
            return DateReading.Read;
        }

        // The usual form first: Thh:mm:ss, then nothing or an offset.
        if (text[0] is not ((byte)'T' or (byte)' ' or (byte)'t')) return DateReading.Unreadable;
        var at = 1;
        if (text.Length > 2 && text[0] == (byte)' ' && text[1] == (byte)' ') at = 2;
        int hour, minute, second = 0;
        if (Two(text, at, out hour)) at += 2;
        else if (at + 1 < text.Length && text[at + 1] == (byte)':' && Digit(text[at], out hour)) at++;
        else return DateReading.Unreadable;
        var colon = at < text.Length && text[at] == (byte)':';
        if (colon) at++;
        if (!Two(text, at, out minute)) return DateReading.Unreadable;
        at += 2;
        if (at < text.Length && (colon ? text[at] == (byte)':' : (uint)(text[at] - '0') <= 9))
        {
            if (colon) at++;
            if (!Two(text, at, out second)) return DateReading.Unreadable;
            at += 2;
            if (at + 1 < text.Length && text[at] is (byte)'.' or (byte)',' && (uint)(text[at + 1] - '0') <= 9)
            {
                at++;
                while (at < text.Length && (uint)(text[at] - '0') <= 9) at++;
            }
        }

        if (!HalfDay(text, ref at, ref hour)) return DateReading.Unreadable;
        if (minute > 59 || second > 59) return DateReading.Unreadable;
        if (hour > 23)
        {
            if (hour != 24 || minute != 0 || second != 0) return DateReading.Unreadable;
            moment.Day++;
            hour = 0;
        }

        moment.Second = (hour * 3600) + (minute * 60) + second;
        return at == text.Length ? DateReading.Read : Offset(text[at..], ref moment);
    }

    private static bool HalfDay(ReadOnlySpan<byte> text, ref int at, ref int hour)
    {
        var mark = at;
        if (mark < text.Length && text[mark] == (byte)' ') mark++;
        if (mark + 2 != text.Length || (text[mark + 1] | 0x20) != 'm') return true;
        var half = text[mark] | 0x20;
        if (half != 'a' && half != 'p') return true;
        if (hour is < 1 or > 12) return false;
        hour = (hour % 12) + (half == 'p' ? 12 : 0);
        at = mark + 2;
        return true;
    }

    private static DateReading Offset(ReadOnlySpan<byte> text, ref WrittenMoment moment)
    {
        if (text[0] == (byte)' ' && text.Length > 1) text = text[1..];
        moment.HasOffset = true;
        if (text.Length == 1 && text[0] is (byte)'Z' or (byte)'z') return DateReading.Read;
        if (text.Length < 3 || text[0] is not ((byte)'+' or (byte)'-') || !Two(text, 1, out var hours)) return DateReading.Unreadable;
        var minutes = 0;
        var read = text.Length switch
        {
            3 => true,
            5 => Two(text, 3, out minutes),
            6 => text[3] == (byte)':' && Two(text, 4, out minutes),
            _ => false,
        };
        if (!read || minutes > 59 || hours > 18) return DateReading.Unreadable;
        moment.OffsetMinutes = (short)(text[0] == (byte)'-' ? -((hours * 60) + minutes) : (hours * 60) + minutes);
        return DateReading.Read;
    }

    private static bool Number(ReadOnlySpan<byte> text, ref int at, int longest, out int value)
    {
        value = 0;
        var from = at;
        while (at < text.Length && at - from < longest && (uint)(text[at] - '0') <= 9) value = (value * 10) + text[at++] - '0';
        return at > from;
    }

    private static bool Digit(byte b, out int value)
    {
        value = b - '0';
        return (uint)value <= 9;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Two(ReadOnlySpan<byte> text, int at, out int value)
    {
        value = 0;
        if (at + 1 >= text.Length) return false;
        var tens = (uint)(text[at] - '0');
        var ones = (uint)(text[at + 1] - '0');
        value = (int)((tens * 10) + ones);
        return tens <= 9 && ones <= 9;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Four(ReadOnlySpan<byte> text, out int value)
    {
        value = 0;
        if (!Two(text, 0, out var high) || !Two(text, 2, out var low)) return false;
        value = (high * 100) + low;
        return true;
    }
}
