using System.Globalization;
using System.Text;

namespace ScreenStats.Records.Understanding;

/// <summary>Folds a heading or word so that case, accents, spaces and punctuation make no difference. The same under every culture.</summary>
internal static class TextFold
{
    public static string Fold(string text)
    {
        var builder = new StringBuilder(text.Length);
        foreach (var c in text.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark) continue;
            if (char.IsLetterOrDigit(c)) builder.Append(char.ToLowerInvariant(c));
        }

        // Words of signs only, such as + and -, stay as they are.
        return builder.Length > 0 ? builder.ToString() : text.Trim();
    }
}
