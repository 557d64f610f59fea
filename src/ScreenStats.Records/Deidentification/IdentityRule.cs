using System.Buffers;
using System.Text;

namespace ScreenStats.Records.Deidentification;

/// <summary>
/// Tells values that name a person from pseudonyms. Every value is looked at. The rule, kept narrow so that badge-like
/// identifiers (<c>P-00123</c>, <c>a8f3e1</c>, <c>12345</c>, identifiers in groups of hexadecimal figures, <c>op-07</c>) pass:
/// <list type="bullet">
/// <item>an e-mail address has text, one @, text with a dot behind it, and no space; it may stand inside of longer text, as behind a name;</item>
/// <item>a telephone number has 7 to 15 figures and begins with + or ( , or is figures in three or four groups of two to four
/// with seven or more figures between them separated by single spaces, hyphens, dots or slashes, the last group of four in the form 3-3-4;</item>
/// <item>a government number is figures in groups as the United States write social security numbers (3-2-4, without those never given out) or
/// the United Kingdom national insurance numbers (two letters, three pairs of figures, a letter);</item>
/// <item>a name is two to four words of letters only, separated by spaces, each beginning with a capital and one of three or
/// more letters, or two such words with a comma or a dot between them in any case. A value with a word of place or office
/// (desk, shift, nurse, site, ...) is no name.</item>
/// </list>
/// What only many values together show, such as names of one word and check digits, is judged by <see cref="ColumnJudgement"/>.
/// </summary>
internal static class IdentityRule
{
    private static readonly SearchValues<byte> Signs = SearchValues.Create(" @,.+(/"u8);

    // What stands around an address in a longer text, as in: A Name <name@example.org>
    private static readonly SearchValues<byte> AroundAddress = SearchValues.Create(" \t\r\n<>()[]\",;:/|"u8);

    private static readonly HashSet<string> PlacesAndOffices = new(StringComparer.OrdinalIgnoreCase)
    {
        "desk", "shift", "nurse", "site", "team", "station", "room", "gate", "kiosk", "self", "unknown", "staff", "lab", "laboratory",
        "clinic", "north", "south", "east", "west", "day", "night", "early", "late", "morning", "evening", "operator", "reader", "tester",
        "collector", "supervisor", "visitor", "employee", "worker", "badge", "person", "subject", "participant", "agency", "contractor",
        "temp", "test", "control", "line", "booth", "point", "unit", "group", "crew", "reception", "security", "health", "first", "aid",
        "none", "not", "recorded", "op", "main", "building", "floor", "front", "back", "trainee", "student", "driver", "id", "number",
    };

    private static readonly char[] Dot = ['.'];
    private static readonly char[] SpaceAndComma = [' ', ','];

    private static readonly HashSet<string> Particles = new(StringComparer.Ordinal) { "van", "von", "de", "der", "den", "da", "di", "del", "la", "le", "bin", "al" };

    /// <summary>True for a word of place or office, whatever its case.</summary>
    public static bool IsPlaceOrOffice(string word) => PlacesAndOffices.Contains(word);

    public static IdentityKind Of(ReadOnlySpan<byte> value)
    {
        var sign = value.IndexOfAny(Signs);
        if (sign < 0)
        {
            if (value.Length is < 10 or > 20 || value[0] > (byte)'9' || !value.Contains((byte)'-')) return IdentityKind.None;
            return SocialSecurity(value) ? IdentityKind.GovernmentNumber : Telephone(value) ? IdentityKind.TelephoneNumber : IdentityKind.None;
        }

        return value.Length <= 200 ? Look(value) : IdentityKind.None;
    }

    private static IdentityKind Look(ReadOnlySpan<byte> value)
    {
        var at = value.IndexOf((byte)'@');
        if (at >= 0 && EmailAddress(value)) return IdentityKind.EmailAddress;
        if (SocialSecurity(value) || NationalInsurance(value)) return IdentityKind.GovernmentNumber;
        if (value[0] is (byte)'+' or (byte)'(' or (>= (byte)'0' and <= (byte)'9')) return Telephone(value) ? IdentityKind.TelephoneNumber : IdentityKind.None;
        return Name(value) ? IdentityKind.Name : IdentityKind.None;
    }

    private static bool EmailAddress(ReadOnlySpan<byte> value)
    {
        while (value.IndexOf((byte)'@') is var at and >= 0)
        {
            var before = value[..at];
            var after = value[(at + 1)..];
            after = after.IndexOfAny(AroundAddress) is var end and >= 0 ? after[..end] : after;
            after = after.TrimEnd((byte)'.');
            if (before.Length > 0 && !AroundAddress.Contains(before[^1]) && after.LastIndexOf((byte)'.') > 0) return true;
            value = value[(at + 1)..];
        }

        return false;
    }

    // Areas 000, 666 and 900 to 999, group 00 and serial 0000 are never given out (Social Security Administration, 2011).
    private static bool SocialSecurity(ReadOnlySpan<byte> value)
    {
        if (value.Length != 11 || value[3] is not ((byte)'-' or (byte)' ') || value[6] != value[3]) return false;
        for (var i = 0; i < 11; i++)
        {
            if (i is not (3 or 6) && value[i] is < (byte)'0' or > (byte)'9') return false;
        }

        return value[0] != (byte)'9' && !value.StartsWith("000"u8) && !value.StartsWith("666"u8) && !value[4..6].SequenceEqual("00"u8) && !value[7..].SequenceEqual("0000"u8);
    }

    // QQ 12 34 56 C: with its spaces only, as without them many a badge is written so.
    private static bool NationalInsurance(ReadOnlySpan<byte> value)
    {
        if (value.Length != 13 || value[2] != (byte)' ' || value[5] != (byte)' ' || value[8] != (byte)' ' || value[11] != (byte)' ') return false;
        for (var i = 0; i < 13; i++)
        {
            if (i is 2 or 5 or 8 or 11) continue;
            if (i is 0 or 1 or 12 ? !char.IsAsciiLetter((char)value[i]) : !char.IsAsciiDigit((char)value[i])) return false;
        }

        return (value[12] | 0x20) is >= 'a' and <= 'd';
    }

    private static bool Telephone(ReadOnlySpan<byte> value)
    {
        var figures = 0;
        var groups = 0;
        var group = 0;
        Span<int> lengths = stackalloc int[16];
        foreach (var b in value)
        {
            if (b is >= (byte)'0' and <= (byte)'9')
            {
                figures++;
                group++;
                continue;
            }

            if (b is not ((byte)' ' or (byte)'-' or (byte)'.' or (byte)'/' or (byte)'+' or (byte)'(' or (byte)')')) return false;
            if (group > 0 && groups < 16) lengths[groups++] = group;
            group = 0;
        }

        if (group > 0 && groups < 16) lengths[groups++] = group;
        if (figures is < 7 or > 15) return false;
        if (value[0] is (byte)'+' or (byte)'(') return true;
        if (groups == 3) return lengths[0] == 3 && lengths[1] == 3 && lengths[2] == 4;
        return groups is 4 or 5 && figures >= 9 && value.Contains((byte)' ') && lengths[..groups].IndexOfAnyExceptInRange(2, 4) < 0;
    }

    private static bool Name(ReadOnlySpan<byte> value)
    {
        if (value.IndexOfAnyInRange((byte)'0', (byte)'9') >= 0) return false;
        var text = Encoding.UTF8.GetString(value);
        var comma = text.Contains(',', StringComparison.Ordinal);
        var dotted = !text.Contains(' ', StringComparison.Ordinal) && text.Contains('.', StringComparison.Ordinal);
        var words = text.Split(dotted ? Dot : SpaceAndComma, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length is < 2 or > 4) return false;
        var longest = 0;
        foreach (var word in words)
        {
            if (PlacesAndOffices.Contains(word)) return false;
            var letters = 0;
            foreach (var c in word)
            {
                if (char.IsLetter(c)) letters++;
                else if (c is not ('\'' or '-' or '.' or '\u2019')) return false;
            }

            if (letters == 0 || (!comma && !dotted && !char.IsUpper(word[0]) && !Particles.Contains(word))) return false;
            if (dotted && letters < 2) return false;
            longest = Math.Max(longest, letters);
        }

        return longest >= 3;
    }
}
