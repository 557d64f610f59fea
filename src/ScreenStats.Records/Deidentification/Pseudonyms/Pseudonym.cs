using System.Security.Cryptography;
using System.Text;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// Makes pseudonyms: <c>p1-</c> and 20 characters of base 32, the first 100 bits of HMAC-SHA-256 (RFC 2104, FIPS 198-1) under
/// the key over the realm, a line feed and the value in the form of <see cref="PersonText"/> as UTF-8.
/// </summary>
/// <remarks>
/// All have the same length, so nothing of the value's length shows. Two of n people share one with probability below
/// n squared / 2^101: 4e-17 for ten million people. The alphabet has no i, l, o, u (Crockford's), and the figure in
/// the prefix keeps any of them from looking like a word. The realm keeps an operator from being linked to the
/// same employee as a screened person.
/// </remarks>
internal sealed class Pseudonym(PseudonymKey key)
{
    public const string Prefix = "p1-";

    /// <summary>Characters behind the prefix, of five bits each.</summary>
    public const int Length = 20;

    public const string PersonRealm = "person";

    public const string OperatorRealm = "operator";

    private const string Alphabet = "0123456789abcdefghjkmnpqrstvwxyz";

    /// <summary>The pseudonym of a value.</summary>
    /// <param name="realm">Whom it names.</param>
    /// <param name="form">The value in the form of <see cref="PersonText"/>.</param>
    public string Of(string realm, string form)
    {
        Span<byte> code = stackalloc byte[HMACSHA256.HashSizeInBytes];
        HMACSHA256.HashData(key.Bytes, Encoding.UTF8.GetBytes(realm + "\n" + form), code);
        Span<char> text = stackalloc char[Prefix.Length + Length];
        Prefix.CopyTo(text);
        for (var i = 0; i < Length; i++)
        {
            var bit = i * 5;
            var pair = (code[bit >> 3] << 8) | code[(bit >> 3) + 1];
            text[Prefix.Length + i] = Alphabet[(pair >> (11 - (bit & 7))) & 31];
        }

        return new string(text);
    }
}
