using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Turns files that are not plain text into text that is: once for a whole reading, into a folder that only this user can
/// look into and that goes with this object. Plain text stays where it is.
/// </summary>
/// <param name="tick">Called often: where a wish to stop is heard.</param>
internal sealed class SourceFiles(Action tick) : IDisposable
{
    private readonly PrivateFolder folder = new();
    private readonly Dictionary<(ExportKind, string), (IReadOnlyList<FilePart> Parts, IReadOnlyList<Diagnostic> Notes)> converted = [];

    /// <summary>The parts of a file; empty, with a diagnostic, where it cannot be read.</summary>
    public IReadOnlyList<FilePart> Open(string path, ExportKind export, ExportSettings settings, HeadingSearch search, List<Diagnostic> errors, List<Diagnostic> notes)
    {
        var name = Path.GetFileName(path);
        var form = FileForm.Of(name);
        if (form == default) return [new FilePart(path, null, false, LineMap.Same)];
        if (converted.TryGetValue((export, path), out var known))
        {
            notes.AddRange(known.Notes);
            return known.Parts;
        }

        try
        {
            var own = new List<Diagnostic>();
            var parts = Convert(path, name, form, export, settings, search, own);
            converted[(export, path)] = (parts, own);
            notes.AddRange(own);
            return parts;
        }
        catch (FileFault fault)
        {
            errors.Add(new Diagnostic(fault.Code, Severity.Error, name, fault.Line, "", fault.Message));
        }
        catch (Exception exception) when (exception is UnauthorizedAccessException or FileNotFoundException)
        {
            errors.Add(new Diagnostic(ReadingDiagnostics.UnreadableFile, Severity.Error, name, null, "",
                $"{name} cannot be opened. Check that you may read it and that no other program holds it."));
        }
        catch (IOException)
        {
            errors.Add(new Diagnostic(ReadingDiagnostics.UnreadableFile, Severity.Error, name, null, "",
                $"{name} cannot be opened, or there is no room to unpack it. Check that no other program holds it and that the disk of temporary files is not full."));
        }

        return [];
    }

    public void Dispose() => folder.Dispose();

    private IReadOnlyList<FilePart> Convert(string path, string name, FileForm form, ExportKind export, ExportSettings settings, HeadingSearch search, List<Diagnostic> notes)
    {
        if (form.Format == FileFormat.Observations && export != ExportKind.Confirmatory)
        {
            throw new FileFault(ReadingDiagnostics.ObservationsElsewhere,
                $"{name} is newline-delimited FHIR, which is read for the confirmatory export only. Export {export.ToString().ToLowerInvariant()} as CSV or as a workbook.");
        }

        if (!OrdinaryFile.HoldsBytes(path)) throw new FileFault(ReadingDiagnostics.EmptyFile, FileSniffer.Empty(name));
        var unpacked = path;
        if (form.Compressed)
        {
            using var text = folder.Create(out unpacked);
            GzipFile.Unpack(path, name, text, tick);
        }

        if (form.Format == FileFormat.DelimitedText) return [new FilePart(unpacked, null, false, LineMap.Same)];
        using var source = new FileStream(unpacked, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);
        if (form.Format == FileFormat.Observations)
        {
            using var lines = folder.Create(out var made);
            return [new FilePart(made, null, false, ObservationFile.Convert(source, name, lines, tick))];
        }

        Span<byte> head = stackalloc byte[8];
        var length = source.ReadAtLeast(head, 8, throwOnEndOfStream: false);
        source.Position = 0;
        if (length == 0) throw new FileFault(ReadingDiagnostics.EmptyFile, FileSniffer.Empty(name));
        if (head[..length].StartsWith<byte>([0xD0, 0xCF, 0x11, 0xE0]))
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} is protected by a password or is a workbook of the old format (.xls). Save it without a password as .xlsx, or export it as CSV.");
        if (!head[..length].StartsWith("PK"u8))
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} is no workbook, as its name says. If it is text, name it .csv; else save it anew as .xlsx.");
        var workbook = new WorkbookFile(name, search, new SheetChoice(export, settings.Sheets.IsDefault ? [] : settings.Sheets), () => folder.Create(out _), tick);
        var parts = workbook.Read(source);
        notes.AddRange(workbook.Notes);
        return parts;
    }
}
