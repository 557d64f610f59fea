using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records;

/// <summary>Which files a program is read from, and how each is understood, before any row is read.</summary>
internal sealed class ProgramPlan
{
    private readonly Dictionary<ExportKind, IReadOnlyList<FilePlan>> files = [];

    public ProgramPlan(ProgramSettings settings, string folder, IReadOnlyDictionary<string, TextEncoding> encodings, SourceFiles sources, List<Diagnostic> errors, List<Diagnostic> notes, bool withoutRows = false)
    {
        if (!Directory.Exists(folder))
        {
            errors.Add(new Diagnostic(ReadingDiagnostics.MissingFolder, Severity.Error, "", null, "",
                "The program's folder does not exist. Check the path."));
            return;
        }

        foreach (var export in Enum.GetValues<ExportKind>())
        {
            // In place of these there are views of a database.
            if (withoutRows && export is (ExportKind.Screening or ExportKind.Confirmatory)) continue;
            var own = Of(settings, export);
            UnknownColumns(export, own, errors);
            UnknownMeanings(export, own, errors);
            var plans = new List<FilePlan>();
            HeadingSearch? search = null;
            foreach (var path in ExportFiles.Find(folder, export, own, errors, notes))
            {
                search ??= new HeadingSearch(export, own);
                foreach (var part in sources.Open(path, export, own, search, errors, notes))
                {
                    if (Plan(path, part, plans.Count, export, own, search, encodings, errors, notes) is { } plan) plans.Add(plan);
                }
            }

            files[export] = plans;
        }

        if (errors.Count == 0 && !withoutRows && Files(ExportKind.Confirmatory).Count == 0
            && ExportFiles.NoConfirmatory(folder, files.Values.SelectMany(plans => plans).Select(plan => plan.SourcePath)) is { } unread) notes.Add(unread);
    }

    public IReadOnlyList<FilePlan> Files(ExportKind export) => files.TryGetValue(export, out var plans) ? plans : [];

    public IEnumerable<(ExportKind Export, FilePlan Plan)> All() => files.OrderBy(entry => entry.Key).SelectMany(entry => entry.Value.Select(plan => (entry.Key, plan)));

    public static ExportSettings Of(ProgramSettings settings, ExportKind export) => export switch
    {
        ExportKind.Screening => settings.Exports.Screening,
        ExportKind.Confirmatory => settings.Exports.Confirmatory,
        ExportKind.Controls => settings.Exports.Controls,
        ExportKind.Headcount => settings.Exports.Headcount,
        _ => settings.Exports.Sites,
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
        string path, FilePart part, int number, ExportKind export, ExportSettings settings, HeadingSearch search,
        IReadOnlyDictionary<string, TextEncoding> encodings, List<Diagnostic> errors, List<Diagnostic> notes)
    {
        var form = FileForm.Of(Path.GetFileName(path));
        var name = part.OneOfSeveral ? $"{Path.GetFileName(path)} ({part.Sheet})" : Path.GetFileName(path);
        if (form.Format == FileFormat.Observations) return Observations(path, part, name, number, settings, errors);
        TextEncoding? forced = form.Format == FileFormat.Workbook ? TextEncoding.Utf8 : encodings.TryGetValue(part.Path, out var known) ? known : null;
        var shape = FileSniffer.Of(part, name, forced, form.Format == FileFormat.Workbook, search, errors);
        if (shape is null) return null;
        if (shape.Encoding == TextEncoding.Windows1252)
        {
            notes.Add(new Diagnostic(ReadingDiagnostics.ReadAsWindows1252, Severity.Note, name, null, "",
                $"{name} is not valid UTF-8 and was read as Windows-1252. If letters look wrong, export it as UTF-8."));
        }

        var line = part.Lines.Of(shape.HeadingLine);
        if (shape.Preamble > 0)
        {
            notes.Add(new Diagnostic(ReadingDiagnostics.LinesBeforeHeadings, Severity.Note, name, line, "",
                $"The headings of {name} were found on line {FindingTexts.Figure(line)}; the {(shape.Preamble == 1 ? "line" : $"{shape.Preamble} lines")} before {(shape.Preamble == 1 ? "it" : "them")} that {(shape.Preamble == 1 ? "is" : "are")} not blank {(shape.Preamble == 1 ? "was" : "were")} not read."));
        }

        var matches = HeadingMatcher.Match(export, name, shape.Headings, settings, line > 0 ? (int)line : null, errors);
        return new FilePlan
        {
            Path = part.Path,
            SourcePath = path,
            SourceLength = new FileInfo(path).Length,
            Form = form,
            Sheet = part.Sheet,
            Lines = part.Lines,
            Name = name,
            Number = number,
            Encoding = shape.Encoding,
            Delimiter = shape.Delimiter,
            RecordsBeforeRows = shape.RecordsBeforeRows,
            Headings = shape.Headings,
            HeadingLine = line,
            Preamble = shape.Preamble,
            Matches = matches,
            Length = shape.Length,
            TwoDigitYears = settings.TwoDigitYears,
            DateOrders = [.. Enumerable.Repeat(settings.DateOrder, matches.Length)],
        };
    }

    /// <summary>The plan of a file of resources: what each element means is fixed by the standard.</summary>
    private static FilePlan? Observations(string path, FilePart part, string name, int number, ExportSettings settings, List<Diagnostic> errors)
    {
        var length = new FileInfo(part.Path).Length;
        if (length == 0)
        {
            errors.Add(new Diagnostic(ReadingDiagnostics.EmptyFile, Severity.Error, name, null, "", $"{name} is empty. Export it again."));
            return null;
        }

        return new FilePlan
        {
            Path = part.Path,
            SourcePath = path,
            SourceLength = new FileInfo(path).Length,
            Form = FileForm.Of(name),
            Lines = part.Lines,
            Name = name,
            Number = number,
            Encoding = TextEncoding.Utf8,
            Delimiter = (byte)',',
            RecordsBeforeRows = 0,
            Headings = ObservationFile.Elements,
            HeadingLine = 0,
            AsideField = ObservationFile.AsideField,
            Matches = [.. CanonicalColumns.Of(ExportKind.Confirmatory).Select(column => Array.IndexOf(ObservationFile.Columns, column.Name) is var field and >= 0
                ? new HeadingMatch(field, HeadingReason.Element)
                : HeadingMatch.Absent)],
            Length = length,
            TwoDigitYears = settings.TwoDigitYears,
            DateOrders = [.. CanonicalColumns.Of(ExportKind.Confirmatory).Select(_ => (DateOrder?)DateOrder.Iso)],
        };
    }
}
