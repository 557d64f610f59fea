using ExcelDataReader;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Turns the sheets of a workbook that hold an export into CSV. The only place that knows ExcelDataReader. Formulas are
/// read by the value that was last worked out; what a format shows otherwise than it is stored is not looked at, but for
/// dates and for figures with leading zeros.
/// </summary>
internal sealed class WorkbookFile(string name, HeadingSearch search, SheetChoice choice, Func<FileStream> create, UnpackingRoom room, Action tick)
{
    private const long MostCells = 200_000_000;
    private readonly List<Diagnostic> notes = [];
    private WorkbookBounds bounds = null!;
    private long most;
    private long written;

    /// <summary>What is to be said of the sheets that were read.</summary>
    public IReadOnlyList<Diagnostic> Notes => notes;

    /// <summary>Turns the sheets that are to be read into files, in the order of the workbook.</summary>
    /// <exception cref="FileFault">It cannot be read, or the sheet cannot be told.</exception>
    public IReadOnlyList<FilePart> Read(Stream workbook)
    {
        // The library asks for this encoding even where it needs none.
        System.Text.Encoding.RegisterProvider(System.Text.CodePagesEncodingProvider.Instance);
        bounds = WorkbookBounds.Check(workbook, name, tick);
        most = UnpackingRoom.AlwaysAllowed + (UnpackingRoom.MostTimes * workbook.Length);
        workbook.Position = 0;
        try
        {
            using var reader = ExcelReaderFactory.CreateOpenXmlReader(workbook, new ExcelReaderConfiguration { LeaveOpen = true });
            return Sheets(reader);
        }
#pragma warning disable CA1031 // The library fails on damaged workbooks with exceptions of many kinds, whose texts may quote a cell.
        catch (Exception exception) when (exception is not (FileFault or OutOfMemoryException or OperationCanceledException or IOException))
#pragma warning restore CA1031
        {
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"{name} cannot be read as a workbook: it is damaged or made in a way that is not known. Open it in a spreadsheet program and save it anew as .xlsx, or export it as CSV.");
        }
    }

    private List<FilePart> Sheets(IExcelDataReader reader)
    {
        var sheets = new List<SheetGlance>();
        if (reader.ResultsCount == 1)
        {
            // Nothing to choose from: what it lacks is said later, and the library need not go through it once more.
            sheets.Add(new SheetGlance(reader.Name, reader.VisibleState is null or "visible", HasCells: true, Fits: true));
        }
        else
        {
            do
            {
                sheets.Add(Glance(reader));
            }
            while (reader.NextResult());
            reader.Reset();
        }

        var chosen = choice.Of(name, sheets);
        var parts = new List<FilePart>();
        for (var sheet = 0; sheet < sheets.Count; sheet++)
        {
            if (chosen.Contains(sheet)) parts.Add(Convert(reader, sheet, chosen.Count > 1));
            reader.NextResult();
        }

        return parts;
    }

    private SheetGlance Glance(IExcelDataReader reader)
    {
        var visible = reader.VisibleState is null or "visible";
        if (!choice.MayBe(reader.Name, visible)) return new SheetGlance(reader.Name, visible, HasCells: false, Fits: false);
        var first = new List<IReadOnlyList<string>>();
        while (first.Count < HeadingSearch.Farthest && Read(reader))
        {
            var texts = Texts(reader);
            if (Array.Exists(texts, text => !string.IsNullOrWhiteSpace(text))) first.Add(Headings(texts));
        }

        return new SheetGlance(reader.Name, visible, first.Count > 0, first.Any(search.Fits), first.Select(search.Recognised).DefaultIfEmpty().Max());
    }

    private static List<string> Headings(string?[] texts) => [.. texts.Select(text => text?.Trim() ?? "")];

    private FilePart Convert(IExcelDataReader reader, int position, bool several)
    {
        var sheet = reader.Name;
        var errors = bounds.Errors(position);
        var shown = several ? $"{name} ({sheet})" : name;
        if ((long)reader.FieldCount * reader.RowCount > MostCells)
            throw new FileFault(ReadingDiagnostics.UnreadableWorkbook, $"In {name}, the sheet \"{sheet}\" reaches over more than {MostCells / 1_000_000} million cells. Remove what stands far outside of the rows, or export it as CSV.");
        using var file = create();
        using var writer = new CsvFileWriter(file, Grown);
        var first = new List<(long Row, object?[] Values, string?[] Formats)>();
        bool[]? dates = null;
        for (var row = 1; Read(reader); row++)
        {
            if (Blank(reader) && !errors.In(row)) continue;
            var values = new object?[reader.FieldCount];
            var formats = new string?[values.Length];
            for (var f = 0; f < values.Length; f++)
            {
                values[f] = reader.IsDBNull(f) ? null : reader.GetValue(f);
                if (values[f] is double or DateTime) formats[f] = reader.GetNumberFormatString(f);
            }

            if (dates is not null)
            {
                Write(writer, row, values, formats, dates);
                continue;
            }

            first.Add((row, values, formats));
            if (first.Count == HeadingSearch.Farthest) dates = Begin(writer, first, reader.MergeCells, shown);
        }

        if (dates is null) Begin(writer, first, reader.MergeCells, shown);
        if (errors.Count > 0)
        {
            var cells = errors.Count == 1 ? "1 cell" : $"{Validation.FindingTexts.Figure(errors.Count)} cells";
            notes.Add(new Diagnostic(ReadingDiagnostics.ErrorCells, Severity.Warning, shown, errors.First, "",
                $"{cells} of {shown} (the first in row {Validation.FindingTexts.Figure(errors.First)}) {(errors.Count == 1 ? "holds" : "hold")} an error, or a formula whose value was never worked out, and {(errors.Count == 1 ? "was" : "were")} read as blank. Correct the formulas and save the workbook in a spreadsheet program.", errors.Count));
        }

        return new FilePart(file.Name, sheet, several, writer.Lines);
    }

    /// <summary>Finds the headings among the first rows and writes these; which columns hold dates.</summary>
    private bool[] Begin(CsvFileWriter writer, List<(long Row, object?[] Values, string?[] Formats)> first, CellRange[]? merged, string shown)
    {
        var texts = first.Select(row => Headings([.. row.Values.Select((value, f) => SheetCell.Text(value, row.Formats[f]))])).ToList();
        var filled = Enumerable.Range(0, texts.Count).Where(at => texts[at].Exists(text => text.Length > 0)).ToList();
        if (filled.Count == 0) return [];
        var heading = filled[search.Find([.. filled.Select(at => texts[at])])];
        Merged(merged, first[heading].Row, shown);
        var dates = search.DateFields(texts[heading]);
        for (var r = 0; r < first.Count; r++) Write(writer, first[r].Row, first[r].Values, first[r].Formats, r > heading ? dates : []);
        return dates;
    }

    private void Merged(CellRange[]? merged, long heading, string shown)
    {
        // A merged range counts rows from 0.
        if (merged is null) return;
        if (merged.Any(range => range.FromRow + 1 <= heading && range.ToRow + 1 >= heading))
        {
            throw new FileFault(ReadingDiagnostics.MergedHeadings,
                $"In {shown} the headings in row {Validation.FindingTexts.Figure(heading)} stand in merged cells, so it cannot be told which column each names. Give every column one cell with its heading, in one row.", heading);
        }

        var below = merged.Where(range => range.FromRow + 1 > heading).ToList();
        if (below.Count == 0) return;
        var first = below.Min(range => range.FromRow) + 1;
        notes.Add(new Diagnostic(ReadingDiagnostics.MergedCells, Severity.Warning, shown, first, "",
            $"{shown} has merged cells below its headings (the first in row {Validation.FindingTexts.Figure(first)}). Only the first row and column of each holds the value, the others were read as blank. Unmerge them and fill each cell.", below.Count));
    }

    private void Write(CsvFileWriter writer, long row, object?[] values, string?[] formats, bool[] dates)
    {
        var texts = new string?[values.Length];
        for (var f = 0; f < texts.Length; f++)
        {
            texts[f] = f < dates.Length && dates[f] ? SheetCell.Date(values[f], formats[f], bounds.Date1904) : SheetCell.Text(values[f], formats[f]);
        }

        // At least one delimiter: a row that holds nothing but errors is a blank row, not a blank line.
        writer.Write(row, texts, least: Math.Min(2, texts.Length));
    }

    /// <summary>One text that a million cells refer to is short in the workbook and long in what comes out.</summary>
    private void Grown(long bytes)
    {
        written += bytes;
        if (written > most)
        {
            throw new FileFault(ReadingDiagnostics.SuspiciousArchive,
                $"The cells of {name} hold more than {UnpackingRoom.MostTimes} times its length in text, which no export does. Nothing was read; check where it comes from, or export it as CSV.");
        }

        room.Take(bytes, name);
    }

    private bool Read(IExcelDataReader reader)
    {
        tick();
        return reader.Read();
    }

    private static bool Blank(IExcelDataReader reader)
    {
        for (var f = 0; f < reader.FieldCount; f++)
        {
            if (!reader.IsDBNull(f)) return false;
        }

        return true;
    }

    private static string?[] Texts(IExcelDataReader reader)
    {
        var texts = new string?[reader.FieldCount];
        for (var f = 0; f < texts.Length; f++) texts[f] = reader.IsDBNull(f) ? null : SheetCell.Text(reader.GetValue(f), null);
        return texts;
    }
}
