using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats.Converting.Columnar;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Turns files that are not plain text into text that is, in a folder that only this user can look into and that goes with this
/// object. Folders that killed processes have left are removed first.
/// </summary>
internal sealed class FileConverter : IDisposable
{
    private readonly PrivateFolder folder = new();
    private readonly UnpackingRoom room;
    private readonly TimeZoneInfo? zone;
    private readonly Action tick;

    /// <param name="largest">Bytes that all files may be turned into together.</param>
    /// <param name="zone">The program's time zone, of which instants are given the offset; null for none.</param>
    /// <param name="tick">Called often: where a wish to stop is heard.</param>
    public FileConverter(long largest, TimeZoneInfo? zone, Action tick)
    {
        this.zone = zone;
        this.tick = tick;
        room = new UnpackingRoom(largest, () => UnpackingRoom.FreeAt(folder.Path));
        StaleFolders.Remove(Path.GetTempPath());
    }

    /// <summary>The parts of a file that is not plain text; empty, with a diagnostic, where it cannot be read.</summary>
    /// <param name="path">The file.</param>
    /// <param name="search">Finds the headings of a sheet.</param>
    /// <param name="choice">Finds the sheets.</param>
    /// <param name="headed">True: resources are written under headings, which are the canonical columns.</param>
    /// <param name="errors">Takes what is wrong.</param>
    /// <param name="notes">Takes what is to be said.</param>
    public IReadOnlyList<FilePart> Open(string path, HeadingSearch search, SheetChoice choice, bool headed, List<Diagnostic> errors, List<Diagnostic> notes)
    {
        var name = Path.GetFileName(path);
        try
        {
            return Convert(path, name, FileForm.Of(name), search, choice, headed, notes);
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

    private IReadOnlyList<FilePart> Convert(string path, string name, FileForm form, HeadingSearch search, SheetChoice choice, bool headed, List<Diagnostic> notes)
    {
        if (!OrdinaryFile.HoldsBytes(path)) throw new FileFault(ReadingDiagnostics.EmptyFile, FileSniffer.Empty(name));
        var unpacked = path;
        if (form.Compressed)
        {
            using var text = folder.Create(out unpacked);
            GzipFile.Unpack(path, name, text, room, tick);
        }

        if (form.Format == FileFormat.DelimitedText) return [new FilePart(unpacked, null, false, LineMap.Same)];
        using var source = new FileStream(unpacked, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);
        if (form.Format == FileFormat.Observations)
        {
            using var lines = folder.Create(out var made);
            return [new FilePart(made, null, false, ObservationFile.Convert(source, name, lines, headed, room, tick))];
        }

        if (form.Format == FileFormat.Parquet)
        {
            using var rows = folder.Create(out _);
            var columns = new ParquetFile(name, search, zone, room, tick);
            var part = columns.Convert(source, rows);
            notes.AddRange(columns.Notes);
            return [part];
        }

        Span<byte> head = stackalloc byte[8];
        var length = source.ReadAtLeast(head, 8, throwOnEndOfStream: false);
        source.Position = 0;
        if (length == 0) throw new FileFault(ReadingDiagnostics.EmptyFile, FileSniffer.Empty(name));
        if (head[..length].StartsWith<byte>([0xD0, 0xCF, 0x11, 0xE0]))
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} is protected by a password or is a workbook of the old format (.xls). Save it without a password as .xlsx, or export it as CSV.");
        if (!head[..length].StartsWith("PK"u8))
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} is no workbook, as its name says. If it is text, name it .csv; else save it anew as .xlsx.");
        var workbook = new WorkbookFile(name, search, choice, () => folder.Create(out _), room, tick);
        var parts = workbook.Read(source);
        notes.AddRange(workbook.Notes);
        return parts;
    }
}
