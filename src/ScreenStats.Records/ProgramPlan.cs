using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records;

/// <summary>Which files a program is read from, and how each is understood, before any row is read.</summary>
internal sealed class ProgramPlan
{
    private readonly Dictionary<ExportKind, IReadOnlyList<FilePlan>> files = [];

    public ProgramPlan(ProgramSettings settings, string folder, IReadOnlyDictionary<string, TextEncoding> encodings, List<Diagnostic> errors, List<Diagnostic> notes)
    {
        if (!Directory.Exists(folder))
        {
            errors.Add(new Diagnostic(ReadingDiagnostics.MissingFolder, Severity.Error, "", null, "",
                "The program's folder does not exist. Check the path."));
            return;
        }

        foreach (var export in Enum.GetValues<ExportKind>())
        {
            var own = Of(settings, export);
            UnknownColumns(export, own, errors);
            UnknownMeanings(export, own, errors);
            var plans = new List<FilePlan>();
            foreach (var path in ExportFiles.Find(folder, export, own, errors))
            {
                if (Plan(path, plans.Count, export, own, encodings, errors, notes) is { } plan) plans.Add(plan);
            }

            files[export] = plans;
        }
    }

    public IReadOnlyList<FilePlan> Files(ExportKind export) => files.TryGetValue(export, out var plans) ? plans : [];

    public IEnumerable<(ExportKind Export, FilePlan Plan)> All() => files.OrderBy(entry => entry.Key).SelectMany(entry => entry.Value.Select(plan => (entry.Key, plan)));

    public static ExportSettings Of(ProgramSettings settings, ExportKind export) => export switch
    {
        ExportKind.Screening => settings.Exports.Screening,
        ExportKind.Confirmatory => settings.Exports.Confirmatory,
        ExportKind.Controls => settings.Exports.Controls,
        _ => settings.Exports.Headcount,
    };

    private static void UnknownColumns(ExportKind export, ExportSettings settings, List<Diagnostic> errors)
    {
        var columns = CanonicalColumns.Of(export);
        foreach (var name in settings.Columns.Keys)
        {
            if (columns.Any(column => column.Name == name)) continue;
            errors.Add(new Diagnostic(ReadingDiagnostics.UnknownColumn, Severity.Error, "", null, name,
                $"The program file maps a column \"{name}\" that the {export.ToString().ToLowerInvariant()} export does not have. "
                + $"Its columns are {string.Join(", ", columns.Select(column => column.Name))}."));
        }
    }

    private static void UnknownMeanings(ExportKind export, ExportSettings settings, List<Diagnostic> errors)
    {
        var tables = Words.Of(export);
        foreach (var (word, meaning) in settings.Words)
        {
            if (tables.Any(table => table.Knows(meaning))) continue;
            errors.Add(new Diagnostic(ReadingDiagnostics.UnknownMeaning, Severity.Error, "", null, "",
                $"The program file gives the word \"{word}\" of the {export.ToString().ToLowerInvariant()} export the meaning \"{meaning}\", which no column of it has. "
                + $"Meanings are {string.Join(", ", tables.SelectMany(table => table.Canonical).Distinct())}."));
        }
    }

    private static FilePlan? Plan(
        string path, int number, ExportKind export, ExportSettings settings, IReadOnlyDictionary<string, TextEncoding> encodings,
        List<Diagnostic> errors, List<Diagnostic> notes)
    {
        var name = Path.GetFileName(path);
        TextEncoding? forced = encodings.TryGetValue(path, out var known) ? known : null;
        var shape = FileSniffer.Sniff(path, name, forced, headings => HeadingMatcher.Recognised(export, headings, settings), errors);
        if (shape is null) return null;
        if (shape.Encoding == TextEncoding.Windows1252)
        {
            notes.Add(new Diagnostic(ReadingDiagnostics.ReadAsWindows1252, Severity.Note, name, null, "",
                $"{name} is not valid UTF-8 and was read as Windows-1252. If letters look wrong, export it as UTF-8."));
        }

        var matches = HeadingMatcher.Match(export, name, shape.Headings, settings, shape.HeadingLine, errors);
        return new FilePlan
        {
            Path = path,
            Name = name,
            Number = number,
            Encoding = shape.Encoding,
            Delimiter = shape.Delimiter,
            RecordsBeforeRows = shape.RecordsBeforeRows,
            Headings = shape.Headings,
            Matches = matches,
            Length = shape.Length,
            DateOrders = [.. Enumerable.Repeat(settings.DateOrder, matches.Length)],
        };
    }
}
