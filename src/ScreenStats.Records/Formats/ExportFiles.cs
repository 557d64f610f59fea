using System.IO.Enumeration;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Formats;

/// <summary>
/// Finds the files of an export: by the names that the program file gives, else by the beginning of their names. A name
/// may be a pattern, or a folder with all files in it that end as exports do.
/// </summary>
internal static class ExportFiles
{
    // Observation resources are read for confirmatory results only.
    private static string Endings(string own) => own == "confirmatory" ? "csv, tsv, txt, xlsx, parquet or ndjson, also with .gz behind it" : "csv, tsv, txt, xlsx or parquet, also with .gz behind it";

    /// <summary>Full paths in ordinal order of the names within a pattern, each file once, patterns in the order given.</summary>
    public static IReadOnlyList<string> Find(string folder, ExportKind export, ExportSettings settings, List<Diagnostic> diagnostics, List<Diagnostic> notes)
    {
        var own = export.ToString().ToLowerInvariant();
        var stated = !settings.Files.IsDefaultOrEmpty;
        var place = new FolderBounds(folder);
        var found = new List<string>();
        var byPattern = new List<string>();
        foreach (var pattern in stated ? settings.Files : [own + "*"])
        {
            if (FolderBounds.LeadsOut(pattern))
            {
                diagnostics.Add(Outside($"The program file names \"{pattern}\" for the {own} export, which leads out of the program's folder. ", own));
                continue;
            }

            var files = Matching(folder, pattern, stated, out var literal);
            if (files.Count == 0 && (export == ExportKind.Screening || stated))
            {
                diagnostics.Add(new Diagnostic(ReadingDiagnostics.MissingFile, Severity.Error, "", null, "", stated
                    ? $"No file \"{pattern}\" was found for the {own} export. Put it into the program's folder, or correct its name in the program file (exports.{own}.files)."
                    : $"No file for the {own} export was found: none that begins with \"{own}\" and ends in {Endings(own)}, such as {own}*.csv. "
                    + $"Rename the file that holds it, put it into the program's folder, or name it in program.json there: {{ \"exports\": {{ \"{own}\": {{ \"files\": [\"its name\"] }} }} }}."
                    + Otherwise(folder)));
            }

            foreach (var file in files.Where(file => !found.Contains(file)))
            {
                if (!place.Holds(file))
                {
                    diagnostics.Add(Outside($"{Path.GetFileName(file)} of the {own} export is a link to a place outside of the program's folder. ", own));
                    continue;
                }

                found.Add(file);
                if (!literal) byPattern.Add(file);
            }
        }

        TwoFormats(byPattern, own, diagnostics);
        if (!stated) NotRead(folder, own, notes);
        return found;
    }

    /// <summary>Without a confirmatory export a file that is called like none may be it, and must not be passed over in silence.</summary>
    /// <param name="folder">The program's folder.</param>
    /// <param name="read">Full paths of what is read.</param>
    /// <returns>What to do; null where there is no such file.</returns>
    public static Diagnostic? NoConfirmatory(string folder, IEnumerable<string> read)
    {
        var names = CalledLikeNone(folder, read);
        if (names.Count == 0) return null;
        return new Diagnostic(ReadingDiagnostics.FileNotRead, Severity.Warning, names[0], null, "",
            $"No confirmatory export was found, and {Named(names)} {(names.Count == 1 ? "is" : "are")} called like no export and {(names.Count == 1 ? "was" : "were")} not read. "
            + "If one holds confirmatory results, let its name begin with \"confirmatory\", or name it in program.json: { \"exports\": { \"confirmatory\": { \"files\": [\"its name\"] } } }.");
    }

    private static string Otherwise(string folder) =>
        CalledLikeNone(folder, []) is { Count: > 0 } names ? $" In the folder, called like no export: {Named(names)}." : "";

    /// <summary>The files that end as exports do and are called like none, so that a new user sees which name to write.</summary>
    private static List<string> CalledLikeNone(string folder, IEnumerable<string> read)
    {
        var exports = Enum.GetNames<ExportKind>();
        var known = read.Select(Path.GetFullPath).ToHashSet(StringComparer.Ordinal);
        return [.. Files(folder, file => FileForm.Usual(file) && file[0] != '.' && !file.StartsWith("~$", StringComparison.Ordinal)
                && !exports.Any(export => file.StartsWith(export, StringComparison.OrdinalIgnoreCase)))
            .Where(file => !known.Contains(Path.GetFullPath(file))).Select(file => Path.GetFileName(file))];
    }

    private static string Named(List<string> names)
    {
        const int MostNamed = 5;
        var more = names.Count > MostNamed ? FormattableString.Invariant($" and {names.Count - MostNamed:N0} more") : "";
        return string.Join(", ", names.Take(MostNamed).Select(name => $"\"{name}\"")) + more;
    }

    private static List<string> Matching(string folder, string pattern, bool stated, out bool literal)
    {
        literal = stated && pattern.AsSpan().IndexOfAny('*', '?') < 0;
        var inner = pattern.TrimEnd('/', '\\');
        if (literal && inner.Length > 0 && Directory.Exists(Path.Combine(folder, inner)))
        {
            literal = false;
            return Files(Path.Combine(folder, inner), file => FileForm.Usual(file) && file[0] != '.' && !file.StartsWith("~$", StringComparison.Ordinal));
        }

        var within = Path.GetDirectoryName(pattern) is { Length: > 0 } outer ? Path.Combine(folder, outer) : folder;
        var name = Path.GetFileName(pattern);
        return Files(within, file => FileSystemName.MatchesSimpleExpression(name, file, ignoreCase: true) && (stated || FileForm.Usual(file)));
    }

    private static List<string> Files(string folder, Func<string, bool> wanted) => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder).Where(file => wanted(Path.GetFileName(file))).OrderBy(Path.GetFileName, StringComparer.Ordinal)]
        : [];

    /// <summary>One export saved in two formats would be counted twice, and nothing in the rows could tell.</summary>
    private static void TwoFormats(List<string> files, string own, List<Diagnostic> diagnostics)
    {
        foreach (var same in files.GroupBy(file => Path.Combine(Path.GetDirectoryName(file) ?? "", FileForm.Stem(Path.GetFileName(file))), StringComparer.Ordinal).Where(same => same.Count() > 1))
        {
            var names = same.Select(file => Path.GetFileName(file)).ToList();
            diagnostics.Add(new Diagnostic(ReadingDiagnostics.TwoFormats, Severity.Error, names[0], null, "",
                $"{string.Join(" and ", names)} differ only in their format, so they may hold the same rows. Remove one, or name the files to read in the program file (exports.{own}.files)."));
        }
    }

    /// <summary>A file that is called like the export but ends otherwise must not be passed over in silence.</summary>
    private static void NotRead(string folder, string own, List<Diagnostic> notes)
    {
        foreach (var name in Files(folder, file => file.StartsWith(own, StringComparison.OrdinalIgnoreCase) && !FileForm.Usual(file)).Select(file => Path.GetFileName(file)))
        {
            notes.Add(new Diagnostic(ReadingDiagnostics.FileNotRead, Severity.Warning, name, null, "",
                $"{name} is called like the {own} export but does not end in {Endings(own)}, so it was not read. If it holds rows, save it in one of these formats; else call it otherwise."));
        }
    }

    private static Diagnostic Outside(string what, string own) => new(ReadingDiagnostics.FileOutsideFolder, Severity.Error, "", null, "",
        what + $"Put the file into the program's folder and name it relative to that (exports.{own}.files).");
}
