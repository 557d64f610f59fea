using System.Collections.Immutable;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Courses;

/// <summary>Reads the course of an infection by day from a CSV file.</summary>
/// <remarks>
/// The first line holds the headings day, detection and infectiousness, in any order; other columns are not read. Each line after it has
/// the days since infection (0 to 3660, not before the line above; a day on two lines is a jump), the chance that one screen is positive (0 to 1) and the
/// infectiousness (0 or more, in any unit). Delimiters are comma, semicolon, tab and bar; where it is not the comma, decimals may have a comma.
/// </remarks>
public static class CourseFile
{
    private const int MostBytes = 1 << 20;

    /// <summary>Settings with the file of a course by day read into them.</summary>
    /// <param name="settings">What the program file says.</param>
    /// <param name="folder">The program's folder: the file is in it, or in a folder inside of it.</param>
    /// <returns>The settings with <see cref="CourseSettings.Days"/>; the same where no such file is named.</returns>
    /// <exception cref="UnusableDataException">The file is not there, is outside of the folder, or cannot be used: everything that is wrong.</exception>
    public static ProgramSettings Into(ProgramSettings settings, string folder)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(folder);
        if (settings.Cadence.Course is not { File: { } name } course) return settings;
        const string where = "Put the file into the program's folder and name it relative to that (cadence.course.file).";
        if (FolderBounds.LeadsOut(name))
            throw Fault(ReadingDiagnostics.FileOutsideFolder, "", $"The program file names \"{name}\" as the course by day, which leads out of the program's folder. {where}");
        var path = Path.Combine(folder, name);
        if (!File.Exists(path))
            throw Fault(ReadingDiagnostics.MissingFile, "", $"No file \"{name}\" was found for the course by day. {where}");
        if (!new FolderBounds(folder).Holds(path))
            throw Fault(ReadingDiagnostics.FileOutsideFolder, Path.GetFileName(path), $"{Path.GetFileName(path)} of the course by day is a link to a place outside of the program's folder. {where}");
        return settings with { Cadence = settings.Cadence with { Course = course with { Days = Read(path) } } };
    }

    /// <summary>Reads one file.</summary>
    /// <param name="path">The file.</param>
    /// <returns>The days in order, at least two.</returns>
    /// <exception cref="UnusableDataException">The file cannot be used: everything that is wrong, in the order of lines.</exception>
    public static ImmutableArray<StatedCourseDay> Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var name = Path.GetFileName(path);
        var text = Text(path, name);
        if (string.IsNullOrWhiteSpace(text)) throw Empty(name);
        return CourseLines.Read(Encoding.UTF8.GetBytes(text), name);
    }

    private static UnusableDataException Fault(string code, string file, string message) =>
        new(new Diagnostic(code, Severity.Error, file, null, "", message));

    private static UnusableDataException Empty(string name) =>
        Fault(ReadingDiagnostics.EmptyFile, name, $"{name} is empty. Write the headings day,detection,infectiousness and a line for each day into it.");

    private static string Text(string path, string name)
    {
        byte[] bytes;
        try
        {
            if (!File.Exists(path)) throw Fault(ReadingDiagnostics.MissingFile, name, $"There is no file {name} for the course by day; check the path.");
            if (!OrdinaryFile.HoldsBytes(path)) throw Empty(name);
            if (new FileInfo(path).Length > MostBytes) throw Fault(ReadingDiagnostics.CourseUnusable, name, $"{name} is larger than 1 MiB; a course by day has one short line for each day.");
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw Fault(ReadingDiagnostics.UnreadableFile, name, $"{name} cannot be opened. Check that you may read it and that no other program holds it.");
        }

        try
        {
            Encoding strict = bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]
                ? new UnicodeEncoding(bigEndian: bytes[0] == 0xFE, byteOrderMark: true, throwOnInvalidBytes: true)
                : new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
            var text = strict.GetString(bytes).TrimStart('\uFEFF');
            if (!text.Contains('\0', StringComparison.Ordinal)) return text;
        }
        catch (DecoderFallbackException)
        {
            // Told below.
        }

        throw Fault(ReadingDiagnostics.NotText, name, $"{name} is not text in UTF-8. Save it as CSV in UTF-8.");
    }
}
