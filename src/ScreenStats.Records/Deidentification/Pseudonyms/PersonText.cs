using System.Text;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// The one form of a value under which the same person is the same in every export. In this order:
/// <list type="number">
/// <item>characters that cannot be seen are removed (soft hyphen, zero-width and direction marks, byte order mark);</item>
/// <item>compatibility caseless form, Unicode definition D146: NFKC(fold(NFKD(fold(NFD(text))))), with full case folding;</item>
/// <item>each run of white space becomes one space, and white space and control characters at both ends are cut off.</item>
/// </list>
/// Accents stay: two people may differ by one.
/// </summary>
internal static class PersonText
{
    /// <summary>The form, or null where the value says that there is nobody: empty, without any letter or figure, or a word for nothing.</summary>
    /// <exception cref="ArgumentException">The text holds a code point that is no character.</exception>
    public static string? Of(string text)
    {
        var seen = WithoutUnseen(text);
        var folded = CaseFolding.Fold(seen.Normalize(NormalizationForm.FormD));
        folded = CaseFolding.Fold(folded.Normalize(NormalizationForm.FormKD)).Normalize(NormalizationForm.FormKC);
        var form = Spaced(folded);
        // The reader takes the same two words for nothing.
        return form is "n/a" or "null" || !form.EnumerateRunes().Any(Rune.IsLetterOrDigit) ? null : form;
    }

    /// <summary>False where this machine cannot normalise text, so that the same person would get two pseudonyms.</summary>
    public static bool Works { get; } = Probe();

    private static bool Probe()
    {
        try
        {
            return "\uFB01\u0041\u030A".Normalize(NormalizationForm.FormKC) == "fi\u00C5";
        }
        catch (PlatformNotSupportedException)
        {
            return false;
        }
    }

    private static string WithoutUnseen(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange('\0', '\u007F')) return text;
        var kept = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (c is not ('\u00AD' or '\u034F' or '\u061C' or (>= '\u200B' and <= '\u200F') or (>= '\u202A' and <= '\u202E')
                or (>= '\u2060' and <= '\u206F') or '\uFEFF' or (>= '\uFE00' and <= '\uFE0F'))) kept.Append(c);
        }

        return kept.ToString();
    }

    private static string Spaced(string text)
    {
        var spaced = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (!char.IsWhiteSpace(c)) spaced.Append(c);
            else if (spaced.Length > 0 && spaced[^1] != ' ') spaced.Append(' ');
        }

        var from = 0;
        var to = spaced.Length;
        while (from < to && (spaced[from] == ' ' || char.IsControl(spaced[from]))) from++;
        while (to > from && (spaced[to - 1] == ' ' || char.IsControl(spaced[to - 1]))) to--;
        return spaced.ToString(from, to - from);
    }
}
