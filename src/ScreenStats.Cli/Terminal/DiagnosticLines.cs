using System.Globalization;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Cli.Terminal;

/// <summary>Prints diagnostics, one after the other: severity, place, message, code, and how often.</summary>
internal static class DiagnosticLines
{
    private const int MostFiles = 5;

    public static void Write(TextWriter writer, IEnumerable<Diagnostic> diagnostics, int width)
    {
        var all = diagnostics.ToList();
        foreach (var diagnostic in all)
        {
            // The same note on several files is said once, of the first.
            var alike = diagnostic.Severity == Severity.Note && diagnostic.File.Length > 0 ? all.FindAll(other => other.Code == diagnostic.Code && other.Severity == Severity.Note && other.File.Length > 0) : [];
            if (alike.Count > 1 && !ReferenceEquals(alike[0], diagnostic)) continue;
            var others = alike.Select(other => other.File).Where(file => file != diagnostic.File).Distinct(StringComparer.Ordinal).ToList();
            var more = others.Count == 0 ? "" : others.Count <= MostFiles ? $" (likewise: {string.Join(", ", others)})" : $" (likewise {Show.Count(others.Count)} other files)";
            writer.Write(Wrapped.Of(Printable.Of(Of(diagnostic) + more), width) + "\n");
        }
    }

    public static string Of(Diagnostic diagnostic)
    {
        // Most messages name their file and their count already; what they leave out is added.
        var place = Names(diagnostic.Message, diagnostic.File) ? "" : Place(diagnostic) + ": ";
        var repeats = diagnostic.Occurrences > 1 && !diagnostic.Message.StartsWith(
            diagnostic.Occurrences.ToString("N0", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            && !Names(diagnostic.Message, Show.Count(diagnostic.Occurrences) + " rows")
            ? $" ({Show.Count(diagnostic.Occurrences)} times)"
            : "";
        return $"{Word(diagnostic.Severity)}: {place}{diagnostic.Message} [{diagnostic.Code}]{repeats}";
    }

    /// <summary>True where the text holds the name as a word of its own, not as a part of another.</summary>
    private static bool Names(string text, string name)
    {
        if (name.Length == 0) return true;
        for (var at = text.IndexOf(name, StringComparison.Ordinal); at >= 0; at = text.IndexOf(name, at + 1, StringComparison.Ordinal))
        {
            var end = at + name.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end]))) return true;
        }

        return false;
    }

    /// <summary>Where it was first seen; empty where it concerns no file.</summary>
    public static string Place(Diagnostic diagnostic) => diagnostic.File.Length == 0 ? "" : diagnostic.Line is { } line
        ? string.Create(CultureInfo.InvariantCulture, $"{diagnostic.File}, line {line}")
        : diagnostic.File;

    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    /// <summary>The name of a choice as words in lower case: "DayFirst" becomes "day first".</summary>
    public static string Words(Enum choice) =>
        string.Concat(choice.ToString().Select((letter, index) =>
            char.IsUpper(letter) ? (index > 0 ? " " : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}
