using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Files.Earlier;
using ScreenStats.Reporting.Files.Schema;
using ScreenStats.Reporting.Files.Workbooks;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting;

/// <summary>Findings as a folder: a page to read, pictures, tables, a workbook, and every figure as data.</summary>
public static class Report
{
    /// <summary>Name of a print of the page, which may stand in the folder too. A browser made it, so it is not among the files of the manifest; a new report takes it away.</summary>
    public const string PrintName = "report.pdf";

    /// <summary>Name of a print that is being written; a run that the system ended may leave it, and a new report takes it away too.</summary>
    public const string PrintPartName = PrintName + ".part";

    /// <summary>Whether a report may be written to a folder; to be asked before long work. Looks only.</summary>
    /// <param name="folder">Where the report is to be.</param>
    /// <exception cref="NotOurFolderException">A file stands there, or a folder that is not wholly a report of ours.</exception>
    public static void CheckFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        ReportFolder.Check(folder);
    }

    /// <summary>
    /// Writes the report: <c>report.html</c>, <c>findings.json</c> with its schema, <c>workbook.xlsx</c>, <c>set-aside.csv</c>, <c>tables/</c> with their description, <c>plots/</c> and
    /// <c>manifest.json</c>. The folder is built beside its place and swapped in; one that stands there is replaced only where it is a
    /// report of ours. The same findings and inputs give the same bytes.
    /// </summary>
    /// <param name="findings">The findings.</param>
    /// <param name="folder">Where the report is to be.</param>
    /// <param name="inputs">Where the findings come from; null for nothing to say of it.</param>
    /// <param name="progress">Told how far it is, by several threads; null for nobody.</param>
    /// <param name="cancellationToken">Stops the work; the place is then as it was.</param>
    /// <exception cref="NotOurFolderException">A file stands there, or a folder that is not wholly a report of ours. Nothing was written.</exception>
    /// <exception cref="IOException">The folder could not be written; the place is as it was.</exception>
    public static void Write(Findings findings, string folder, ReportInputs? inputs = null, IProgress<WriteProgress>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        ReportFolder.Check(folder);
        var given = inputs ?? new ReportInputs();
        // The text of rows that were set aside may name people: it is for whoever asked for it.
        var ownerOnly = given.SetAside.Any(line => line.Text is not null) ? "set-aside.csv" : null;
        ReportFolder.Write(folder, Files(findings, given, progress, cancellationToken), cancellationToken, ownerOnly);
    }

    /// <summary>Reads the tables of an earlier report of the same program, to compare a new one with.</summary>
    /// <param name="folder">Its folder.</param>
    /// <returns>The tables, as the readers of that report have them.</returns>
    /// <exception cref="NotOurFolderException">The folder holds no report of ours, or not all of it.</exception>
    public static EarlierRelease ReadRelease(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var own = Directory.Exists(folder) ? Manifest.OwnFilesOf(folder) : null;
        var tables = own?.Where(name => name.StartsWith("tables/", StringComparison.Ordinal) && name.EndsWith(".csv", StringComparison.Ordinal)).ToArray() ?? [];
        if (tables.Length == 0) throw new NotOurFolderException($"The folder {folder} holds no report of ours to compare with; give the folder of an earlier report, with its {Manifest.FileName} and tables.");
        if (tables.FirstOrDefault(name => !File.Exists(Path.Combine(folder, name))) is { } missing)
            throw new NotOurFolderException($"The earlier report in {folder} lacks {missing}; give the whole folder as it was written.");
        return new EarlierRelease(tables.ToImmutableDictionary(name => Path.GetFileNameWithoutExtension(name), name => File.ReadAllText(Path.Combine(folder, name)), StringComparer.Ordinal));
    }

    /// <summary>Reads what of an earlier evaluation can be compared with another.</summary>
    /// <param name="path">Its findings.json, or the folder of its report.</param>
    /// <returns>What can be compared; as much as the file shows.</returns>
    /// <exception cref="NotFindingsException">There is no such file, or it is no findings.json of ours, or of a newer format.</exception>
    public static EvaluationSnapshot ReadEvaluation(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var file = Directory.Exists(path) ? Path.Combine(path, FindingsFile.FileName) : path;
        if (!File.Exists(file))
        {
            throw new NotFindingsException(file == path
                ? $"There is no file {path}; name the findings.json of an earlier evaluation, or the folder of its report."
                : $"The folder {path} holds no {FindingsFile.FileName}; name the folder of an earlier report, or its {FindingsFile.FileName}.");
        }

        try
        {
            return FindingsReader.Read(File.ReadAllBytes(file), file);
        }
        catch (Exception fault) when (fault is UnauthorizedAccessException or (IOException and not NotFindingsException))
        {
            throw new NotFindingsException($"The file {file} cannot be read; check that you may read it.", fault);
        }
    }

    /// <summary>Whether a folder is a whole report of ours that hides small counts: one made for readers.</summary>
    /// <param name="folder">The folder.</param>
    /// <returns>False also where there is none.</returns>
    public static bool IsRelease(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var own = Directory.Exists(folder) ? Manifest.OwnFilesOf(folder) : null;
        return own?.Contains("tables/sites.csv") == true && own.All(name => File.Exists(Path.Combine(folder, name))) && Hides(File.ReadAllBytes(Path.Combine(folder, FindingsFile.FileName)));
    }

    private static bool Hides(byte[] findings)
    {
        try
        {
            using var document = JsonDocument.Parse(findings);
            return document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty("disclosure", out _);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>Whether a report speaks of a site of this tally: then it is taken as one of the same program.</summary>
    /// <param name="folder">The report's folder.</param>
    /// <param name="tally">The tally.</param>
    /// <returns>Whether a site is in both.</returns>
    public static bool HasSiteOf(string folder, Counting.Cubes.Tally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        var sites = tally.Cells.Screens.Select(cell => cell.Site).ToHashSet(StringComparer.Ordinal);
        return ReadRelease(folder).Sites.Any(sites.Contains);
    }

    /// <summary>Every file of the report: relative paths with slashes, and bytes.</summary>
    internal static SortedDictionary<string, byte[]> Files(Findings findings, ReportInputs inputs, IProgress<WriteProgress>? progress = null, CancellationToken cancellationToken = default)
    {
        // Whoever writes a report gets what the program file asks for; nothing small slips out because a step was left out.
        findings = DisclosureControl.Apply(findings);
        if (findings.Disclosure is not null) inputs = inputs with { Diagnostics = Veiled.Diagnostics(inputs.Diagnostics), SetAside = [] };
        var version = inputs.Version ?? Manifest.OwnVersion;
        var tables = findings.Tables;
        // Workbook and data file depend on nothing but the findings: they are made beside pages and pictures.
        var workbook = Task.Run(() => Workbook.Of(tables), cancellationToken);
        var json = Task.Run(() => FindingsFile.Of(findings), cancellationToken);
        var model = ReportModel.Of(findings, inputs, version);
        var charts = model.Charts;
        var drawn = new (string Svg, byte[] Png)[charts.Length];
        var parts = charts.Length + 3;
        var done = 0;
        void Done() => progress?.Report(new WriteProgress(Interlocked.Increment(ref done), parts));
        Parallel.For(0, charts.Length, new ParallelOptions { CancellationToken = cancellationToken }, index =>
        {
            drawn[index] = (ChartRenderer.Svg(charts[index]), ChartRenderer.Png(charts[index]));
            Done();
        });
        var files = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        void Text(string name, string text) => files.Add(name, new UTF8Encoding(false).GetBytes(text));
        for (var index = 0; index < charts.Length; index++)
        {
            Text($"plots/{charts[index].Id}.svg", drawn[index].Svg);
            files.Add($"plots/{charts[index].Id}.png", drawn[index].Png);
        }

        cancellationToken.ThrowIfCancellationRequested();
        foreach (var table in tables) Text($"tables/{table.Id}.csv", CsvText.Of(table));
        Text("tables/columns.csv", ColumnDescriptions.Csv(tables));
        Text("tables/" + DataPackage.FileName, DataPackage.Of(model.Title, tables));
        Text("set-aside.csv", SetAsideText.Of(inputs.SetAside));
        Text(FindingsFile.FileName, json.GetAwaiter().GetResult());
        Done();
        Text(FindingsFile.SchemaName, FindingsFile.ReadSchema());
        files.Add("workbook.xlsx", workbook.GetAwaiter().GetResult());
        Done();
        Text("report.html", ReportHtml.Of(model, charts.Zip(drawn).ToDictionary(pair => pair.First.Id, pair => pair.Second.Svg, StringComparer.Ordinal)));
        Done();
        Text(Manifest.FileName, JsonText.Of(Manifest.Of(inputs, version, files)));
        return files;
    }
}
