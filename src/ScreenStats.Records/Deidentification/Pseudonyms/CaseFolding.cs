using System.Text;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// Full case folding (the Unicode Standard, section 3.13, mappings C and F). The table is our own copy, so that a pseudonym
/// depends neither on the machine nor on the version of a library.
/// </summary>
internal static class CaseFolding
{
    private static readonly Dictionary<int, string> Table = Build();

    public static string Fold(string text)
    {
        StringBuilder? folded = null;
        var at = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            if (Table.TryGetValue(rune.Value, out var to))
            {
                folded ??= new StringBuilder(text.Length + 8).Append(text, 0, at);
                folded.Append(to);
            }
            else folded?.Append(text, at, rune.Utf16SequenceLength);

            at += rune.Utf16SequenceLength;
        }

        return folded?.ToString() ?? text;
    }

    private static Dictionary<int, string> Build()
    {
        var table = new Dictionary<int, string>();
        foreach (var (first, last, step, add) in CaseFoldingData.Single)
        {
            for (var point = first; point <= last; point += step) table.Add(point, char.ConvertFromUtf32(point + add));
        }

        foreach (var (from, to) in CaseFoldingData.Several) table.Add(from, to);
        return table;
    }
}
