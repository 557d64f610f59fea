using System.Text;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Which free text of a resource may stay: words that are known, and short ones that look like nobody.</summary>
internal static class ResourceText
{
    private const int Longest = 60;

    private static readonly Func<string, int> KnownResult = Words.Confirmation.Reader([]);

    /// <summary>True for a result or a method that is long or may name somebody.</summary>
    public static bool MayNameSomebody(string column, ReadOnlySpan<byte> value)
    {
        if (column is not (CanonicalColumns.Result or CanonicalColumns.Method) || value.IsEmpty) return false;
        if (value.Length > Longest) return true;
        var text = Encoding.UTF8.GetString(value);
        if (column == CanonicalColumns.Result && KnownResult(text) >= 0) return false;
        var words = text.Split([' ', '\u00A0', ',', ';', ':', '.', '(', ')', '/', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries);
        return IdentityRule.Of(value) != IdentityKind.None || words.Any(word => FrequentNames.Contains(word) || IdentityRule.Of(Encoding.UTF8.GetBytes(word)) != IdentityKind.None);
    }
}
