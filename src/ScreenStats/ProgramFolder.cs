using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;

namespace ScreenStats;

/// <summary>Finds a program on the disk and reads its program file.</summary>
internal static class ProgramFolder
{
    private const string FileName = "program.json";
    private const long MostBytes = 16 * 1024 * 1024;

    /// <summary>The folder of a program, and its file where there is one.</summary>
    public static (string Folder, string? File) Find(string path)
    {
        var full = Path.GetFullPath(path);
        if (Directory.Exists(full))
        {
            var file = Path.Combine(full, FileName);
            return (full, File.Exists(file) ? file : null);
        }

        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(full));
        if (!File.Exists(full))
            throw Fault(ProgramFile.NotFoundCode, name, "There is no folder and no program file of this name; check the path.");
        if (!string.Equals(Path.GetExtension(full), ".json", StringComparison.OrdinalIgnoreCase))
            throw Fault(ProgramFile.NotFoundCode, name, "This is not a program file (.json); give the folder that holds the exports, or its program.json.");
        return (Path.GetDirectoryName(full)!, full);
    }

    /// <summary>The settings that a program file states.</summary>
    public static ProgramSettings Settings(string file)
    {
        var name = Path.GetFileName(file);
        try
        {
            if (!Records.Formats.OrdinaryFile.HoldsBytes(file)) throw Fault(ProgramFile.UnreadableCode, name, "The program file is empty, or is a pipe or a device; write { } into a file for the defaults.");
            if (new FileInfo(file).Length > MostBytes) throw Fault(ProgramFile.UnreadableCode, name, "The program file is larger than 16 MiB; it holds settings, not rows.");
            var bytes = File.ReadAllBytes(file);
            var strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
            return ProgramFile.Parse(strict.GetString(bytes), name);
        }
        catch (DecoderFallbackException)
        {
            throw Fault(ProgramFile.UnreadableCode, name, "The program file is not UTF-8 text; save it as UTF-8.");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw Fault(ProgramFile.UnreadableCode, name, "The program file cannot be opened; check that it is readable and not locked by another program.");
        }
    }

    private static UnusableDataException Fault(string code, string file, string message) =>
        new(new Diagnostic(code, Severity.Error, file, null, "", message));
}
