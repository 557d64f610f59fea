using System.Collections.Immutable;
using System.Text;

namespace ScreenStats.Evaluation.Changes;

/// <summary>What a text says, numbers aside. Digits of names are no numbers: an answer that names another lot says something else.</summary>
internal sealed class AnswerWording
{
    private static readonly string[] Kinds = ["lot ", "lots ", "site ", "sites "];
    private readonly ImmutableArray<string> names;

    /// <summary>Takes names into account.</summary>
    /// <param name="names">Names of sites, lots and devices.</param>
    // The longest first, so that the whole of a name is kept and not one that it begins with.
    public AnswerWording(IEnumerable<string> names) =>
        this.names = [.. names.Where(name => name.Any(char.IsAsciiDigit)).OrderByDescending(name => name.Length).ThenBy(name => name, StringComparer.Ordinal)];

    /// <summary>A text with every number, its signs and separators replaced by one sign, names kept.</summary>
    public string Of(string text)
    {
        var said = new StringBuilder(text.Length);
        for (var at = 0; at < text.Length;)
        {
            if (NameAt(text, at) is { } name)
            {
                said.Append(name);
                at += name.Length;
                continue;
            }

            if (!char.IsAsciiDigit(text[at]))
            {
                said.Append(text[at++]);
                continue;
            }

            var start = at;
            while (at < text.Length && (char.IsAsciiDigit(text[at]) || (text[at] is '.' or ',' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1])))) at++;
            // Digits that touch a letter, or a letter's hyphen, are of a name.
            var touches = (start > 0 && char.IsLetter(text[start - 1])) || (start > 1 && text[start - 1] == '-' && char.IsLetterOrDigit(text[start - 2]) && !char.IsAsciiDigit(text[start - 2]))
                || (at < text.Length && char.IsLetter(text[at]));
            if (touches)
            {
                said.Append(text, start, at - start);
                continue;
            }

            // The sign before a difference is part of it.
            if (said.Length > 0 && said[^1] is ('+' or '-')) said.Length--;
            said.Append('#');
        }

        return said.ToString();
    }

    private string? NameAt(string text, int at)
    {
        if (at > 0 && char.IsLetterOrDigit(text[at - 1])) return null;
        foreach (var name in names)
        {
            if (string.CompareOrdinal(text, at, name, 0, name.Length) != 0) continue;
            if (at + name.Length < text.Length && char.IsLetterOrDigit(text[at + name.Length])) continue;
            // A name without a letter looks like any number, so only what is called a lot or a site is one.
            if (name.Any(char.IsLetter) || Kinds.Any(kind => at >= kind.Length && string.Compare(text, at - kind.Length, kind, 0, kind.Length, StringComparison.OrdinalIgnoreCase) == 0)) return name;
        }

        return null;
    }
}
