namespace ScreenStats.Records.Deidentification;

/// <summary>
/// Rules of check characters that national, insurance, record and card numbers follow. One value in ten or so passes each by chance,
/// so a single value says nothing; that nearly all of a column pass does.
/// </summary>
/// <remarks>
/// Sources: Luhn, ISO/IEC 7812-1:2017 annex B; MOD 11-2, MOD 97-10 and MOD 11,10, ISO 7064:2003; Verhoeff, Error Detecting Decimal
/// Codes, 1969 (12 figures: Aadhaar); EAN-13, GS1 General Specifications (756…: Swiss insured persons). The weights of single
/// countries are from memory: NHS number (10 figures), BSN (9), PESEL (11), Norwegian and Brazilian numbers (11), Belgian (11) and French (15)
/// national register numbers, Spanish DNI and NIE.
/// </remarks>
internal static class CheckDigits
{
    /// <summary>Number of rules.</summary>
    public const int Rules = 12;

    private const string SpanishLetters = "TRWAGMYFPDXBNJZSQVHLCKE";

    private static ReadOnlySpan<byte> VerhoeffTimes => "0123456789123406789523401789563401289567401239567859876043216598710432765982104387659321049876543210"u8;

    private static ReadOnlySpan<byte> VerhoeffTurn => "01234567891576283094580379614289160435279453126870428657390127938064157046913258"u8;

    /// <summary>For each rule a bit: those whose form the value has, and those it passes.</summary>
    public static (int Form, int Passed) Of(ReadOnlySpan<byte> value)
    {
        Span<byte> text = stackalloc byte[24];
        var length = 0;
        foreach (var b in value)
        {
            if (b is (byte)' ' or (byte)'-' or (byte)'.' or (byte)'/') continue;
            if (length == text.Length || !char.IsAsciiLetterOrDigit((char)b)) return default;
            text[length++] = (byte)char.ToUpperInvariant((char)b);
        }

        text = text[..length];
        var form = 0;
        var passed = 0;
        for (var rule = 0; rule < Rules; rule++)
        {
            if (Passes(rule, text) is not { } passes) continue;
            form |= 1 << rule;
            if (passes) passed |= 1 << rule;
        }

        return (form, passed);
    }

    /// <summary>Whether a rule is passed; null where the value has not its form.</summary>
    internal static bool? Passes(int rule, ReadOnlySpan<byte> text)
    {
        var figures = text.ContainsAnyExceptInRange((byte)'0', (byte)'9') ? 0 : text.Length;
        return rule switch
        {
            0 => figures is 9 or 10 or 12 or 13 or (>= 15 and <= 19) ? Luhn(text) : null,
            1 => figures == 11 ? Iso7064Hybrid(text) : null,
            2 => text.Length is 16 or 18 && !text[..^1].ContainsAnyExceptInRange((byte)'0', (byte)'9') && (text[^1] == 'X' || char.IsAsciiDigit((char)text[^1])) ? Iso7064Pure(text) : null,
            3 => figures == 12 ? Verhoeff(text) : null,
            4 => figures == 10 ? Weighted(text, [10, 9, 8, 7, 6, 5, 4, 3, 2, 1], 11) : null,
            5 => figures == 9 ? Weighted(text, [9, 8, 7, 6, 5, 4, 3, 2, -1], 11) : null,
            6 => figures == 11 ? Weighted(text, [1, 3, 7, 9, 1, 3, 7, 9, 1, 3, 1], 10) : null,
            7 => figures == 11 ? Weighted(text, [3, 7, 6, 1, 8, 9, 4, 5, 2, 1, 0], 11) && Weighted(text, [5, 4, 3, 2, 7, 6, 5, 4, 3, 2, 1], 11) : null,
            8 => figures == 11 ? Brazilian(text, 9) && Brazilian(text, 10) : null,
            9 => figures == 11 ? Complement(text, 9) : figures == 15 ? Complement(text, 13) : null,
            10 => Spanish(text),
            11 => figures == 13 && text.StartsWith("756"u8) ? Weighted(text, [1, 3, 1, 3, 1, 3, 1, 3, 1, 3, 1, 3, 1], 10) : null,
            _ => throw new ArgumentOutOfRangeException(nameof(rule)),
        };
    }

    private static bool Luhn(ReadOnlySpan<byte> text)
    {
        var sum = 0;
        for (var i = 0; i < text.Length; i++)
        {
            var figure = text[^(i + 1)] - '0';
            if (i % 2 == 1) figure = figure > 4 ? (figure * 2) - 9 : figure * 2;
            sum += figure;
        }

        return sum % 10 == 0;
    }

    private static bool Iso7064Hybrid(ReadOnlySpan<byte> text)
    {
        var product = 10;
        foreach (var b in text[..^1])
        {
            var sum = (product + b - '0') % 10;
            product = (sum == 0 ? 10 : sum) * 2 % 11;
        }

        return (product + text[^1] - '0') % 10 == 1;
    }

    private static bool Iso7064Pure(ReadOnlySpan<byte> text)
    {
        var sum = 0;
        foreach (var b in text[..^1]) sum = (sum + b - '0') * 2 % 11;
        return (sum + (text[^1] == 'X' ? 10 : text[^1] - '0')) % 11 == 1;
    }

    private static bool Verhoeff(ReadOnlySpan<byte> text)
    {
        var check = 0;
        for (var i = 0; i < text.Length; i++)
        {
            var turned = VerhoeffTurn[(i % 8 * 10) + text[^(i + 1)] - '0'] - '0';
            check = VerhoeffTimes[(check * 10) + turned] - '0';
        }

        return check == 0;
    }

    private static bool Weighted(ReadOnlySpan<byte> text, ReadOnlySpan<int> weights, int modulus)
    {
        var sum = 0;
        for (var i = 0; i < weights.Length; i++) sum += (text[i] - '0') * weights[i];
        return sum % modulus == 0;
    }

    private static bool Brazilian(ReadOnlySpan<byte> text, int before)
    {
        var sum = 0;
        for (var i = 0; i < before; i++) sum += (text[i] - '0') * (before + 1 - i);
        return sum * 10 % 11 % 10 == text[before] - '0';
    }

    private static bool Complement(ReadOnlySpan<byte> text, int before)
    {
        var number = 0L;
        foreach (var b in text[..before]) number = (number * 10) + b - '0';
        var check = ((text[^2] - '0') * 10) + text[^1] - '0';
        // Belgian numbers of people born from 2000 on have a 2 put before them.
        return 97 - (number % 97) == check || (before == 9 && 97 - ((number + 2_000_000_000) % 97) == check);
    }

    private static bool? Spanish(ReadOnlySpan<byte> text)
    {
        if (text.Length != 9 || !char.IsAsciiLetter((char)text[8])) return null;
        var first = text[0] switch { (byte)'X' => 0, (byte)'Y' => 1, (byte)'Z' => 2, >= (byte)'0' and <= (byte)'9' => text[0] - '0', _ => -1 };
        if (first < 0 || text[1..8].ContainsAnyExceptInRange((byte)'0', (byte)'9')) return null;
        var number = first;
        foreach (var b in text[1..8]) number = (number * 10) + b - '0';
        return SpanishLetters[number % 23] == text[8];
    }
}
