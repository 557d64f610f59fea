using System.Buffers;
using System.Text;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification;

/// <summary>What one value looks like, for judging a column by all of them.</summary>
/// <param name="Kind">As <see cref="IdentityRule"/> has it.</param>
/// <param name="Other">Other looks.</param>
/// <param name="Form">Check-digit rules whose form it has.</param>
/// <param name="Passed">Check-digit rules that it passes.</param>
internal readonly record struct ValueTraits(IdentityKind Kind, ValueLooks Other, int Form, int Passed)
{
    private static readonly SearchValues<byte> AddressSigns = SearchValues.Create("0123456789abcdefABCDEF.:"u8);

    private const int FirstBirthYear = 1920;
    private const int LastBirthYear = 2012;

    public static ValueTraits Of(ReadOnlySpan<byte> value)
    {
        if (value.Length is < 2 or > 200) return default;
        var looks = ValueLooks.None;
        var (form, passed) = CheckDigits.Of(value);
        if (BirthDate(value)) looks |= ValueLooks.BirthDate;
        if (InternetAddress(value)) looks |= ValueLooks.InternetAddress;
        if (value.StartsWith("http://"u8) || value.StartsWith("https://"u8) || value.StartsWith("www."u8)) looks |= ValueLooks.WebAddress;
        if (!value.ContainsAnyInRange((byte)'0', (byte)'9'))
        {
            var text = Encoding.UTF8.GetString(value);
            var words = text.Split([' ', ',', '.', '-'], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 1 && text.All(char.IsLetter)) looks |= ValueLooks.OneWord;
            if (words.Any(FrequentNames.Contains)) looks |= ValueLooks.HoldsFrequentName;
        }

        return new ValueTraits(IdentityRule.Of(value), looks, form, passed);
    }

    private static bool BirthDate(ReadOnlySpan<byte> value)
    {
        if (value.Length is < 8 or > 19 || !char.IsAsciiDigit((char)value[0])) return false;
        if (DateParser.Read(value, DateOrder.DayFirst, out var moment) != DateReading.Read && DateParser.Read(value, DateOrder.MonthFirst, out moment) != DateReading.Read) return false;
        // Eight figures in a row are a date only by chance; a badge is no birthday.
        if (value.Length == 8 && !value.ContainsAnyExceptInRange((byte)'0', (byte)'9')) return false;
        var year = new DateOnly(2000, 1, 1).AddDays(moment.Day).Year;
        return year is >= FirstBirthYear and <= LastBirthYear;
    }

    private static bool InternetAddress(ReadOnlySpan<byte> value)
    {
        if (value.Length is < 7 or > 45) return false;
        var dots = value.Count((byte)'.');
        if (dots != 3 && value.Count((byte)':') < 2) return false;
        return !value.ContainsAnyExcept(AddressSigns) && System.Net.IPAddress.TryParse(Encoding.ASCII.GetString(value), out _)
            && (dots == 3 || value.Contains((byte)':') && value.Length > 8 && !value.Contains((byte)'.'));
    }
}
