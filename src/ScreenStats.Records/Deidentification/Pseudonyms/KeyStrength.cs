using System.Buffers;
using System.Buffers.Text;
using System.Text;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// Whether the content of a file can be a key: 256 random bits, written as hexadecimal figures, as Base64, or as bare bytes.
/// A password is refused whatever its length: people's words can be tried out, and the people behind the pseudonyms with them.
/// </summary>
/// <remarks>
/// 32 random bytes have about 30 different values and about 30 different steps between neighbours; fewer than 20 and 16 come
/// by chance less than once in 10^12. Random Base64 is taken for words about once in 50,000.
/// </remarks>
internal static class KeyStrength
{
    /// <summary>Bytes that a key has at least.</summary>
    public const int FewestBytes = 32;

    private static readonly SearchValues<byte> Figures = SearchValues.Create("0123456789abcdefABCDEF"u8);

    private const int FewestDifferent = 20;
    private const int FewestSteps = 16;

    /// <summary>The key, or why it is none.</summary>
    public static (byte[]? Key, string Fault) Of(ReadOnlySpan<byte> content)
    {
        if (content.IsEmpty) return (null, "is empty");
        var text = content.Trim(" \t\r\n"u8);
        if (Printable(text))
        {
            if (Hexadecimal(text) is { } figures) return Judged(figures);
            if (text.IndexOfAny(" \t\r\n"u8) < 0 && Base64Bytes(text) is { } bytes)
            {
                return Words(text) ? (null, "holds words, as a password does") : Judged(bytes);
            }

            return (null, text.Length < 43 ? "is too short" : "holds text, as a password does");
        }

        return ValidText(text) ? (null, "holds text, as a password does") : Judged(content.ToArray());
    }

    private static (byte[]? Key, string Fault) Judged(byte[] key)
    {
        if (key.Length < FewestBytes) return (null, "is too short");
        if (Printable(key)) return (null, "holds text, as a password does");
        var steps = new HashSet<int>();
        for (var i = 1; i < key.Length; i++) steps.Add((key[i] - key[i - 1]) & 0xFF);
        return key.Distinct().Count() < FewestDifferent || steps.Count < FewestSteps ? (null, "repeats itself or follows a rule, so it is not random") : (key, "");
    }

    private static byte[]? Hexadecimal(ReadOnlySpan<byte> text)
    {
        if (text.Length % 2 != 0 || text.ContainsAnyExcept(Figures)) return null;
        return Convert.FromHexString(Encoding.ASCII.GetString(text));
    }

    private static byte[]? Base64Bytes(ReadOnlySpan<byte> text)
    {
        if (text.Length < 43 || !Base64Url.IsValid(text, out var length) && !Base64.IsValid(text, out length)) return null;
        var bytes = new byte[length];
        if (Base64Url.IsValid(text)) Base64Url.DecodeFromUtf8(text, bytes, out _, out _);
        else Base64.DecodeFromUtf8(text, bytes, out _, out _);
        return bytes;
    }

    // Of random Base64 four in ten characters are small letters and as many are capitals; of a pass phrase nearly all are small.
    private static bool Words(ReadOnlySpan<byte> text)
    {
        var small = 0;
        var capital = 0;
        foreach (var b in text)
        {
            if (b is >= (byte)'a' and <= (byte)'z') small++;
            else if (b is >= (byte)'A' and <= (byte)'Z') capital++;
        }

        return Math.Max(small, capital) * 10 > text.Length * 7 || small == 0 || capital == 0;
    }

    private static bool Printable(ReadOnlySpan<byte> bytes) => !bytes.ContainsAnyExceptInRange((byte)' ', (byte)'~');

    private static bool ValidText(ReadOnlySpan<byte> bytes)
    {
        if (!System.Text.Unicode.Utf8.IsValid(bytes)) return false;
        foreach (var b in bytes)
        {
            if (b < 0x20 && b is not ((byte)'\t' or (byte)'\r' or (byte)'\n')) return false;
        }

        return true;
    }
}
