using System.IO.Enumeration;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Formats;

/// <summary>Finds the files of an export.</summary>
internal static class ExportFiles
{
    public static string DefaultPattern(ExportKind export) => export switch
    {
        ExportKind.Screening => "screening*.csv",
        ExportKind.Confirmatory => "confirmatory*.csv",
        ExportKind.Controls => "controls*.csv",
        _ => "headcount*.csv",
    };

    /// <summary>Full paths in ordinal order of the names within a pattern, each file once, patterns in the order given.</summary>
    public static IReadOnlyList<string> Find(string folder, ExportKind export, ExportSettings settings, List<Diagnostic> diagnostics)
    {
        var patterns = settings.Files.IsDefaultOrEmpty ? [DefaultPattern(export)] : settings.Files;
        var found = new List<string>();
        foreach (var pattern in patterns)
        {
            var files = Matching(folder, pattern);
            if (files.Count == 0 && (export == ExportKind.Screening || !settings.Files.IsDefaultOrEmpty))
            {
                diagnostics.Add(new Diagnostic(ReadingDiagnostics.MissingFile, Severity.Error, "", null, "",
                    $"No file \"{pattern}\" was found for the {export.ToString().ToLowerInvariant()} export. "
                    + $"Put it into the program's folder, or name it in the program file (exports.{export.ToString().ToLowerInvariant()}.files)."));
            }

            found.AddRange(files.Where(file => !found.Contains(file)));
        }

        return found;
    }

    private static List<string> Matching(string folder, string pattern)
    {
        var within = Path.GetDirectoryName(pattern) is { Length: > 0 } inner ? Path.Combine(folder, inner) : folder;
        var name = Path.GetFileName(pattern);
        if (!Directory.Exists(within)) return [];
        return [.. Directory.EnumerateFiles(within)
            .Where(file => FileSystemName.MatchesSimpleExpression(name, Path.GetFileName(file), ignoreCase: true))
            .OrderBy(Path.GetFileName, StringComparer.Ordinal)];
    }
}
