using System.IO.Enumeration;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>Which sheets of a workbook are read: those that are named, else the one whose headings fit.</summary>
/// <param name="named">Names or patterns; empty where none is named.</param>
/// <param name="words">How messages speak of it.</param>
internal sealed class SheetChoice(IReadOnlyList<string> named, SheetWords words)
{
    /// <summary>The sheets of an export, which the program file may name.</summary>
    public SheetChoice(ExportKind export, IReadOnlyList<string> named)
        : this(named, SheetWords.Of(export.ToString().ToLowerInvariant()))
    {
    }

    /// <summary>True for a sheet that may be read: a named one, else one that is not hidden.</summary>
    public bool MayBe(string sheet, bool visible) =>
        named.Count == 0 ? visible : named.Any(pattern => FileSystemName.MatchesSimpleExpression(pattern, sheet, ignoreCase: true));

    /// <summary>Positions of the sheets to read.</summary>
    /// <exception cref="FileFault">They cannot be told.</exception>
    public IReadOnlyList<int> Of(string file, IReadOnlyList<SheetGlance> sheets)
    {
        var may = Enumerable.Range(0, sheets.Count).Where(at => MayBe(sheets[at].Name, sheets[at].Visible)).ToList();
        if (named.Count > 0)
        {
            var missing = named.FirstOrDefault(pattern => !may.Exists(at => FileSystemName.MatchesSimpleExpression(pattern, sheets[at].Name, ignoreCase: true)));
            if (missing is null) return may;
            throw new FileFault(ReadingDiagnostics.MissingSheet,
                $"{file} has no sheet \"{missing}\", which {words.Named}. Its sheets are {Names(sheets)}.");
        }

        var fitting = may.Where(at => sheets[at].Fits).ToList();
        if (fitting.Count == 1) return fitting;
        if (fitting.Count > 1)
        {
            throw new FileFault(ReadingDiagnostics.AmbiguousSheets,
                $"{file} has {fitting.Count} sheets with {words.Headings}: {Names([.. fitting.Select(at => sheets[at])])}. {words.Say}");
        }

        var filled = may.Where(at => sheets[at].HasCells).ToList();
        // The one sheet that could be meant: messages then say what it lacks, and nothing of it is counted.
        if (filled.Count == 1) return filled;
        var trying = filled.Where(at => sheets[at].Recognised >= HeadingSearch.FewestRecognised).ToList();
        if (trying.Count == 1) return trying;
        throw filled.Count == 0
            ? new FileFault(ReadingDiagnostics.EmptyFile, $"{file} has no sheet with anything in it{(sheets.Any(sheet => !sheet.Visible) ? " that is not hidden" : "")}. Export it again.")
            : new FileFault(ReadingDiagnostics.AmbiguousSheets,
                $"No sheet of {file} has all headings that {words.Needed}. Its sheets are {Names(sheets)}. {words.SayBoth}");
    }

    private static string Names(IReadOnlyList<SheetGlance> sheets) =>
        string.Join(", ", sheets.Take(20).Select(sheet => $"\"{sheet.Name}\"")) + (sheets.Count > 20 ? ", ..." : "");
}
