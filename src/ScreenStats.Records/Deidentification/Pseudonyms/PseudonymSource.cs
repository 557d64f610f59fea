using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>The text that is read for a file that is to be pseudonymized: the file itself, or what it was turned into, which goes with this object.</summary>
internal sealed class PseudonymSource : IDisposable
{
    private readonly FileConverter? converter;

    private PseudonymSource(string name, FileForm form, HeadingSearch search, FileConverter? converter)
    {
        Name = name;
        Form = form;
        Search = search;
        this.converter = converter;
    }

    /// <summary>Name without folder.</summary>
    public string Name { get; }

    public FileForm Form { get; }

    /// <summary>Finds the headings.</summary>
    public HeadingSearch Search { get; }

    /// <summary>The text.</summary>
    public FilePart Part { get; private set; } = null!;

    /// <summary>What is to be said of it.</summary>
    public List<Diagnostic> Notes { get; } = [];

    public static PseudonymSource Open(PseudonymizeRequest request, CancellationToken cancellationToken)
    {
        var name = Path.GetFileName(request.Source);
        if (!File.Exists(request.Source)) throw PseudonymPlan.Refused(name, null, ReadingDiagnostics.UnreadableFile, $"There is no file {name}; check the path.");
        var form = FileForm.Of(name);
        if (form.Format == FileFormat.Observations) CheckColumns(request, name);
        if (request.Sheet is not null && form.Format != FileFormat.Workbook) throw new PseudonymizeException($"{name} is no workbook, so it has no sheets; leave --sheet out.");
        var named = request.Columns.Concat(request.OperatorColumns).Concat(request.Drop).Concat(request.Generalise.Select(item => item.Column));
        var search = new HeadingSearch(named, request.Generalise.Select(item => item.Column));
        if (form == default) return new PseudonymSource(name, form, search, null) { Part = new FilePart(request.Source, null, false, LineMap.Same) };

        var source = new PseudonymSource(name, form, search, new FileConverter(request.LargestUnpacked, zone: null, cancellationToken.ThrowIfCancellationRequested));
        try
        {
            source.Convert(request);
            return source;
        }
        catch
        {
            source.Dispose();
            throw;
        }
    }

    public void Dispose() => converter?.Dispose();

    /// <summary>Resources have no headings: their columns are known beforehand.</summary>
    private static void CheckColumns(PseudonymizeRequest request, string name)
    {
        var columns = string.Join(", ", ObservationFile.Columns);
        if (!request.Columns.Any(column => TextFold.Fold(column) == CanonicalColumns.Person))
            throw new PseudonymizeException($"{name} is newline-delimited FHIR, of which the columns {columns} are written. Name the one with people: --columns person.");
        var others = request.Columns.Concat(request.OperatorColumns).Concat(request.Drop).Concat(request.Generalise.Select(item => item.Column));
        if (others.FirstOrDefault(column => !ObservationFile.Columns.Any(known => TextFold.Fold(known) == TextFold.Fold(column))) is { } unknown)
            throw new PseudonymizeException($"{name} is newline-delimited FHIR, of which the columns {columns} are written; there is none called \"{unknown}\".");
    }

    private void Convert(PseudonymizeRequest request)
    {
        var errors = new List<Diagnostic>();
        var parts = converter!.Open(request.Source, Search, new SheetChoice(request.Sheet is null ? [] : [request.Sheet], SheetWords.OfColumns), headed: true, errors, Notes);
        if (errors.Count > 0) throw new UnusableDataException([.. errors]);
        if (parts.Count > 1) throw new PseudonymizeException($"--sheet fits {parts.Count} sheets of {Name}; name one.");
        Part = parts[0];
    }
}
