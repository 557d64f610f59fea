using System.Globalization;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Cli.Terminal;

/// <summary>Prints diagnostics, one a line: place, severity, message, code, and how often.</summary>
internal static class DiagnosticLines
{
    public static void Write(TextWriter writer, IEnumerable<Diagnostic> diagnostics)
    {
        foreach (var diagnostic in diagnostics) writer.Write(Of(diagnostic) + "\n");
    }

    public static string Of(Diagnostic diagnostic)
    {
        var place = diagnostic.File.Length == 0 ? "" : diagnostic.Line is { } line
            ? string.Create(CultureInfo.InvariantCulture, $"{diagnostic.File}, line {line}: ")
            : $"{diagnostic.File}: ";
        var word = diagnostic.Severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "note" };
        var repeats = diagnostic.Occurrences > 1 ? $" ({Show.Count(diagnostic.Occurrences)} times)" : "";
        return $"{word}: {place}{diagnostic.Message} [{diagnostic.Code}]{repeats}";
    }
}
