using System.Collections.Immutable;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Evaluation.Model;
using ScreenStats.Records;

namespace ScreenStats.Cli.Commands;

/// <summary><c>inspect</c>: how the exports were understood, what became of every row, and what is wrong with the data.</summary>
internal sealed class InspectCommand : ProgramCommand
{
    public InspectCommand()
        : base("inspect", "How files, columns, words and dates were understood; the ledger; what is wrong with the data",
            "screenstats inspect my-program", "screenstats inspect my-program/program.json --json")
    {
        TakeReadingOptions();
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var program = Open(invocation);
        var reading = Read(invocation, program);
        var result = new InspectResult(
            program.Settings.Title, reading.Result.Understanding,
            [.. reading.Ledger.Select(cell => new LedgerItem(LevelNames.Of(cell.Export), LevelNames.Of(cell.Entry), cell.Rows))],
            reading.Diagnostics);

        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
        return ExitCode.Done;
    }

    private static void Render(InspectResult result, Screen screen)
    {
        screen.Title(result.Title);
        foreach (var export in result.Exports.Where(export => !export.Files.IsEmpty)) RenderExport(export, screen);
        screen.Line();
        screen.Title("Ledger: what became of every row");
        screen.Table(
            [new("export"), new("entry"), new("rows", true)],
            result.Ledger.GroupBy(item => item.Export).SelectMany(export => export
                .Select(item => new[] { item.Export, item.Entry, Show.Count(item.Rows) })
                .Prepend([export.Key, "read", Show.Count(export.Sum(item => item.Rows))])));
        screen.Line();
        screen.Title("Findings in the data");
        if (result.Diagnostics.IsEmpty) screen.Line("none");
        else
        {
            screen.Table(
                [new("severity"), new("code"), new("count", true), new("first"), new("what")],
                result.Diagnostics.Select(found => new[]
                {
                    DiagnosticLines.Word(found.Severity), found.Code, Show.Count(found.Occurrences), DiagnosticLines.Place(found), found.Message,
                }));
        }

        screen.Caution();
    }

    private static void RenderExport(ExportUnderstanding export, Screen screen)
    {
        foreach (var file in export.Files)
        {
            screen.Line();
            screen.Title($"{LevelNames.Of(export.Export)}: {file.Name}");
            screen.Line(string.Join(", ", Form(file)));
            screen.Table(
                [new("heading"), new("read as"), new("because")],
                file.Headings.Select(heading => new[] { heading.Heading, heading.Column ?? "(not read)", DiagnosticLines.Words(heading.Why) }));
        }

        screen.Line();
        screen.Table(
            [new("column"), new("recorded", true), new("understood as")],
            export.Columns.Where(column => column.Mapped).Select(column => new[]
            {
                column.Column, $"{Show.Count(column.Recorded)} of {Show.Count(column.Rows)}", UnderstoodAs(column),
            }));
        var absent = export.Columns.Where(column => !column.Mapped).Select(column => column.Column).ToImmutableArray();
        if (!absent.IsEmpty) screen.Line("not in the export: " + string.Join(", ", absent));
    }

    /// <summary>What a file is, in the order in which one would ask for it.</summary>
    private static IEnumerable<string> Form(FileUnderstanding file)
    {
        yield return $"{Show.Count(file.Rows)} {(file.Rows == 1 ? "row" : "rows")}";
        yield return file.Format;
        if (file.Encoding is not null) yield return file.Encoding;
        if (file.Delimiter is not null) yield return $"delimiter {file.Delimiter}";
        if (file.Sheet is not null) yield return $"sheet \"{file.Sheet}\"";
        if (file.HeadingLine is { } line and > 1) yield return $"headings on line {Show.Count(line)}";
        if (file.LinesBeforeHeadings > 0) yield return file.LinesBeforeHeadings == 1 ? "1 line before them not read" : $"{Show.Count(file.LinesBeforeHeadings)} lines before them not read";
    }

    private static string UnderstoodAs(ColumnUnderstanding column)
    {
        var parts = new List<string>();
        if (!column.Words.IsDefaultOrEmpty)
            parts.Add(string.Join(", ", column.Words.Select(word => $"{word.Word} = {(word.TakenFor.Length == 0 ? "not recorded" : word.TakenFor)} ({Show.Count(word.Rows)})")));
        if (column.UnknownWords > 0) parts.Add(column.UnknownWords == 1 ? "1 row with a word that is not known" : $"{Show.Count(column.UnknownWords)} rows with words that are not known");
        if (column.DateOrder is { } order) parts.Add($"{DiagnosticLines.Words(order)} ({column.DateOrderWhy})");
        if (column.FirstDay is { } first && column.LastDay is { } last)
            parts.Add($"{first.ToString("O", System.Globalization.CultureInfo.InvariantCulture)} to {last.ToString("O", System.Globalization.CultureInfo.InvariantCulture)}");
        return string.Join("; ", parts);
    }
}
