using ScreenStats.Counting.Programs;
using ScreenStats.Records;
using ScreenStats.Records.Courses;

namespace ScreenStats;

/// <summary>A screening program on the disk: its exports and what its program file says about them.</summary>
/// <remarks>
/// The way through the library is open, read, evaluate, write:
/// <code>
/// var program  = ScreeningProgram.Open("sample-data/my-program");
/// var reading  = program.Read();
/// var findings = reading.Tally.Evaluate(program.Settings);
/// Report.Write(findings, "report");
/// </code>
/// Namespaces a caller needs: <c>ScreenStats</c>, <c>ScreenStats.Evaluation</c>, <c>ScreenStats.Reporting</c> and
/// <c>ScreenStats.Statistics.Proportions</c>; for data frames also the package Microsoft.Data.Analysis.
/// </remarks>
public sealed class ScreeningProgram
{
    private ScreeningProgram(string folder, string? file, ProgramSettings settings)
    {
        Folder = folder;
        File = file;
        Settings = settings;
    }

    /// <summary>The full path of the folder that holds the exports.</summary>
    public string Folder { get; }

    /// <summary>The full path of the program file; null where the folder has none and the defaults hold.</summary>
    public string? File { get; }

    /// <summary>What the program file says, defaults filled in.</summary>
    public ProgramSettings Settings { get; }

    /// <summary>Opens a program. No export is read yet.</summary>
    /// <param name="path">A folder with exports, with or without a program.json; or the path of a program file beside its exports.</param>
    /// <returns>The program; where its file states no title, that of the folder's name, made readable.</returns>
    /// <exception cref="Counting.Diagnostics.UnusableDataException">
    /// There is no such folder or file, or the program file, or a course by day that it names, cannot be read; holds every problem of the file.
    /// </exception>
    public static ScreeningProgram Open(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var (folder, file) = ProgramFolder.Find(path);
        var settings = file is null ? new ProgramSettings() : CourseFile.Into(ProgramFolder.Settings(file), folder);
        return new(folder, file, settings.Title == new ProgramSettings().Title ? settings with { Title = ProgramTitle.OfFolder(folder) ?? settings.Title } : settings);
    }

    /// <summary>Reads and counts every export of the program.</summary>
    /// <param name="options">How they are read; null: the defaults. What is read does not depend on it.</param>
    /// <returns>Ledger, diagnostics and tally.</returns>
    /// <exception cref="Counting.Diagnostics.UnusableDataException">The data cannot be used: everything that is wrong, errors first.</exception>
    public Reading Read(ReadOptions? options = null) => new(Settings.Warehouse is null
        ? new ProgramReader().Read(Settings, Folder, options)
        : Warehouses.Open().Read(Settings, Folder, options));

    /// <summary>A program file that pins how the exports were understood, so that nothing is left to recognise; what the present one says of other things is kept.</summary>
    /// <param name="understanding">How they were understood.</param>
    /// <returns>The file; <see cref="PinnedProgram"/> writes it.</returns>
    /// <exception cref="IOException">The present program file cannot be read any more.</exception>
    public System.Text.Json.Nodes.JsonObject Pinned(System.Collections.Immutable.ImmutableArray<ExportUnderstanding> understanding) =>
        PinnedProgram.Of(understanding, File is null ? null : System.IO.File.ReadAllText(File));

    /// <summary>The same program with other settings, such as another confidence.</summary>
    /// <param name="settings">The settings.</param>
    /// <returns>The program.</returns>
    public ScreeningProgram With(ProgramSettings settings) => new(Folder, File, settings);
}
