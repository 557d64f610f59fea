using System.Collections.Immutable;
using System.Text;

namespace ScreenStats.Counting.Rules;

/// <summary>Names that may be one name spelled in several ways.</summary>
public static class SpellingRule
{
    /// <summary>A name without what people spell differently: case, blanks, and the letter O for the figure 0.</summary>
    /// <remarks>Hyphens and other signs stay: 1-23 and 12-3 are different lots. The same under every culture.</remarks>
    /// <param name="name">The name.</param>
    /// <returns>Its folded form.</returns>
    public static string Fold(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var folded = new StringBuilder(name.Length);
        foreach (var letter in name.Normalize(NormalizationForm.FormKC))
        {
            if (char.IsWhiteSpace(letter)) continue;
            var upper = char.ToUpperInvariant(letter);
            folded.Append(upper == 'O' ? '0' : upper);
        }

        return folded.ToString();
    }

    /// <summary>Groups of at least two different names whose folded forms are the same.</summary>
    /// <param name="names">Different names.</param>
    /// <returns>The groups, and the names in each, in ordinal order.</returns>
    public static ImmutableArray<ImmutableArray<string>> Alike(IEnumerable<string> names) =>
    [
        .. names.GroupBy(Fold, StringComparer.Ordinal).Where(group => group.Skip(1).Any())
            .Select(group => group.Order(StringComparer.Ordinal).ToImmutableArray()).OrderBy(group => group[0], StringComparer.Ordinal),
    ];
}
