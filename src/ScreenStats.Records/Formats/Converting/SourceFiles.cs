using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Turns files that are not plain text into text that is: once for a whole reading, into a folder that only this user can
/// look into and that goes with this object. Plain text stays where it is.
/// </summary>
/// <param name="largest">Bytes that all files may be turned into together.</param>
/// <param name="zone">The program's time zone; null for none.</param>
/// <param name="tick">Called often: where a wish to stop is heard.</param>
internal sealed class SourceFiles(long largest, TimeZoneInfo? zone, Action tick) : IDisposable
{
    private readonly FileConverter converter = new(largest, zone, tick);
    private readonly Dictionary<(ExportKind, string), (IReadOnlyList<FilePart> Parts, IReadOnlyList<Diagnostic> Notes)> converted = [];

    private readonly Dictionary<string, FileStamp> stamps = new(StringComparer.Ordinal);

    /// <summary>The files that are no longer what they were when they were first opened, one message each.</summary>
    public IReadOnlyList<Diagnostic> Changed() => [.. stamps.Where(file => FileStamp.Of(file.Key) != file.Value).Select(file => Path.GetFileName(file.Key)).Order(StringComparer.Ordinal)
        .Select(ChangedWhileRead)];

    /// <summary>What is said of a file that changed.</summary>
    public static Diagnostic ChangedWhileRead(string name) => new(ReadingDiagnostics.ChangedWhileRead, Severity.Error, name, null, "",
        $"{name} changed while it was read, so what was read of it is no one state of the file. Wait until the export is written to its end and start again, or read a copy.");

    /// <summary>The parts of a file; empty, with a diagnostic, where it cannot be read.</summary>
    public IReadOnlyList<FilePart> Open(string path, ExportKind export, ExportSettings settings, HeadingSearch search, List<Diagnostic> errors, List<Diagnostic> notes)
    {
        var name = Path.GetFileName(path);
        stamps.TryAdd(path, FileStamp.Of(path));
        var form = FileForm.Of(name);
        if (form == default) return [new FilePart(path, null, false, LineMap.Same)];
        if (converted.TryGetValue((export, path), out var known))
        {
            notes.AddRange(known.Notes);
            return known.Parts;
        }

        if (form.Format == FileFormat.Observations && export != ExportKind.Confirmatory)
        {
            errors.Add(new Diagnostic(ReadingDiagnostics.ObservationsElsewhere, Severity.Error, name, null, "",
                $"{name} is newline-delimited FHIR, which is read for the confirmatory export only. Export {export.ToString().ToLowerInvariant()} as CSV or as a workbook."));
            return [];
        }

        var own = new List<Diagnostic>();
        var parts = converter.Open(path, search, new SheetChoice(export, settings.Sheets.IsDefault ? [] : settings.Sheets), headed: false, errors, own);
        if (parts.Count > 0) converted[(export, path)] = (parts, own);
        notes.AddRange(own);
        return parts;
    }

    public void Dispose() => converter.Dispose();
}
