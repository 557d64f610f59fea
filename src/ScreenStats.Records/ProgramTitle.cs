using System.Text;
using ScreenStats.Records.Deidentification;

namespace ScreenStats.Records;

/// <summary>A title for a program whose file states none.</summary>
public static class ProgramTitle
{
    private const int Longest = 80;

    /// <summary>The name of its folder, with blanks for underscores, hyphens and points.</summary>
    /// <param name="folder">The folder.</param>
    /// <returns>The title; null where the name says nothing, is longer than 80 characters, or could be a person's.</returns>
    public static string? OfFolder(string folder)
    {
        var words = Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)).Split(['_', '-', ' ', '.'], StringSplitOptions.RemoveEmptyEntries);
        var name = string.Join(' ', words);
        if (!name.Any(char.IsLetter) || name.Any(char.IsControl) || name.Length > Longest) return null;
        if (words.Any(FrequentNames.Contains) || IdentityRule.Of(Encoding.UTF8.GetBytes(name)) is not (IdentityKind.None or IdentityKind.Name)) return null;
        return char.ToUpperInvariant(name[0]) + name[1..];
    }
}
