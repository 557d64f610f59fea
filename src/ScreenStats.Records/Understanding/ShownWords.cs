using System.Collections.Immutable;
using System.Text;
using ScreenStats.Records.Deidentification;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// Which texts may be shown where understanding is shown. Messages, reports and set-aside lists never hold a cell's text;
/// inspect alone may show, to the person who holds the exports, the names of sites, lots and kits, the words that are known,
/// and of the words that are not known those which are surely no person's: the column holds mostly known words, so it is the
/// column of choices it was taken for, or only a few different ones, none of which is a frequent name, under a heading that asks for no
/// person; the word stands in several rows; it is short, of letters and a few signs only, and looks like no name, address or number of a
/// person. Of all others only the number of rows is shown.
/// </summary>
internal static class ShownWords
{
    /// <summary>Fewest rows of an unknown word that is shown.</summary>
    public const int FewestRows = 5;

    private const int Longest = 30;
    private const int Most = 20;
    private const int MostChoices = 8;

    /// <summary>What stands in headings under which a person's name may stand: collected by, contact.</summary>
    private static readonly HashSet<string> AsksForSomebody = new(StringComparer.Ordinal) { "by", "von", "durch", "par", "por", "contact", "kontakt", "contacto" };

    /// <summary>The unknown words that may be shown, the most frequent first.</summary>
    /// <param name="unknown">Unknown words with their rows.</param>
    /// <param name="known">Rows of the column with a known word.</param>
    /// <param name="headings">The headings it is read from.</param>
    public static ImmutableArray<WordUnderstanding> Unknown(IReadOnlyList<(string Text, long Times)> unknown, long known, IEnumerable<string> headings)
    {
        if (known < unknown.Sum(word => word.Times) && !IsFewChoices(unknown, headings)) return [];
        return
        [
            .. unknown.Where(word => word.Times >= FewestRows && CouldBeShown(word.Text))
                .OrderByDescending(word => word.Times).ThenBy(word => word.Text, StringComparer.Ordinal).Take(Most).Select(word => new WordUnderstanding(word.Text, "", word.Times)),
        ];
    }

    /// <summary>True for an unknown word that may be shown if it stands in rows enough; of others it is kept only how often they came.</summary>
    public static bool CouldBeShown(string word) => word.Length <= Longest && word.All(IsOfWords) && IsNobody(word);

    /// <summary>A column in a language that is not known has a few words, each in many rows; a column of people has more, or their names.</summary>
    private static bool IsFewChoices(IReadOnlyList<(string Text, long Times)> unknown, IEnumerable<string> headings) =>
        unknown.Count <= MostChoices
        && unknown.All(word => word.Times >= FewestRows && CouldBeShown(word.Text)
            && !word.Text.Split([' ', '-', '/']).Any(FrequentNames.Contains))
        && !headings.SelectMany(heading => heading.Split([' ', '-', '_', '.', '/', '(', ')'])).Any(part => AsksForSomebody.Contains(TextFold.Fold(part)));

    private static bool IsOfWords(char sign) => char.IsLetter(sign) || sign is ' ' or '-' or '+' or '/';

    /// <summary>The most frequent names of sites, lots or kits; none that looks like a person.</summary>
    public static ImmutableArray<LevelUnderstanding> Levels(IEnumerable<(string Text, long Times)> met, IReadOnlySet<string> unshown) =>
        [.. MostFrequent(met)
            .Where(level => level.Text.Length <= 2 * Longest && IsNobody(level.Text) && !unshown.Contains(level.Text)).Select(level => new LevelUnderstanding(level.Text, level.Times))];

    // There can be millions: only the most frequent so far are kept.
    private static List<(string Text, long Times)> MostFrequent(IEnumerable<(string Text, long Times)> met)
    {
        var most = new List<(string Text, long Times)>(Most + 1);
        foreach (var level in met)
        {
            var at = most.Count;
            while (at > 0 && (level.Times > most[at - 1].Times || (level.Times == most[at - 1].Times && string.CompareOrdinal(level.Text, most[at - 1].Text) < 0))) at--;
            if (at == Most) continue;
            most.Insert(at, level);
            if (most.Count > Most) most.RemoveAt(Most);
        }

        return most;
    }

    private static bool IsNobody(string text) => IdentityRule.Of(Encoding.UTF8.GetBytes(text)) == IdentityKind.None;
}
