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
        try
        {
            var reading = Read(invocation, program);
            Show(invocation, new InspectResult(
                program.Settings.Title, false, reading.Result.Understanding,
                [.. reading.Ledger.Select(cell => new LedgerItem(LevelNames.Of(cell.Export), LevelNames.Of(cell.Entry), cell.Rows))],
                reading.Diagnostics, program.Pinned(reading.Result.Understanding)));
            return ExitCode.Done;
        }
        catch (RefusedReadingException refusal)
        {
            // How far things were understood is what helps to mend them; the diagnostics themselves follow on the error stream.
            if (refusal.Understanding.Any(export => !export.Files.IsEmpty)) Show(invocation, new InspectResult(program.Settings.Title, true, refusal.Understanding, [], refusal.Diagnostics, program.Pinned(refusal.Understanding)));
            throw;
        }
    }

    private void Show(Invocation invocation, InspectResult result)
    {
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, invocation.Screen);
    }

    private static void Render(InspectResult result, Screen screen)
    {
        screen.Title(result.Title);
        screen.Text(TimeZone(result));
        foreach (var export in result.Exports.Where(export => !export.Files.IsEmpty)) RenderExport(export, screen);
        if (!result.Refused)
        {
            RenderLedger(result, screen);
            RenderFindings(result, screen);
        }

        screen.Line();
        screen.Title(result.Refused
            ? "What is understood so far, as a program.json to complete and save beside the exports"
            : "This understanding as a program.json, to save beside the exports");
        screen.Verbatim(PinnedProgram.Text(result.ProgramFile, ProgramHints.Of(result.Exports, result.Diagnostics, result.ProgramFile)).TrimEnd('\n'));
        screen.Caution();
    }

    private static void RenderFindings(InspectResult result, Screen screen)
    {
        screen.Line();
        screen.Title("Findings in the data");
        if (result.Diagnostics.IsEmpty) screen.Line("none");

        // What is to be done must be readable on a narrow screen: a line to find it by, and the message below.
        foreach (var found in result.Diagnostics)
        {
            screen.Text(string.Join(", ", new[]
            {
                $"{DiagnosticLines.Word(found.Severity)} {found.Code}", found.Occurrences == 1 ? "once" : $"{Terminal.Show.Count(found.Occurrences)} times", DiagnosticPlaces.Text(found),
            }.Where(part => part.Length > 0)));
            screen.Indented(found.Message);
        }
    }

    private static void RenderLedger(InspectResult result, Screen screen)
    {
        screen.Line();
        screen.Title("Ledger: what became of every row");
        screen.Table(
            [new("export"), new("entry"), new("rows", true)],
            result.Ledger.GroupBy(item => item.Export).SelectMany(export => export
                .Select(item => new[] { item.Export, item.Entry, Terminal.Show.Count(item.Rows) })
                .Prepend([export.Key, "read", Terminal.Show.Count(export.Sum(item => item.Rows))])));
    }

    private static void RenderExport(ExportUnderstanding export, Screen screen)
    {
        foreach (var file in export.Files)
        {
            screen.Line();
            screen.Title($"{LevelNames.Of(export.Export)}: {file.Name}");
            screen.Text(string.Join(", ", Form(file)));
            screen.Table(
                [new("heading"), new("read as"), new("because")],
                file.Headings.Select(heading => new[] { heading.Heading, heading.Column ?? "(not read)", heading.Column is null ? "" : DiagnosticLines.Words(heading.Why) }));
        }

        screen.Line();
        screen.Table(
            [new("column"), new("recorded", true), new("understood as")],
            export.Columns.Where(column => column.Mapped).Select(column => new[]
            {
                column.Column, column.Rows == 0 ? "not read" : $"{Terminal.Show.Count(column.Recorded)} of {Terminal.Show.Count(column.Rows)} ({Share(column.Recorded, column.Rows)})", UnderstoodAs(column),
            }));
        var absent = export.Columns.Where(column => !column.Mapped).Select(column => column.Column).ToImmutableArray();
        if (!absent.IsEmpty) screen.Text("no heading was recognised for: " + string.Join(", ", absent));
        var unread = ProgramHints.Unread(export);
        if (absent.IsEmpty || unread.IsEmpty) return;
        screen.Text("headings not read: " + string.Join(", ", unread));
        screen.Text($"If one of them holds one of these columns, say so in program.json: {{ \"exports\": {{ \"{LevelNames.Of(export.Export)}\": {{ \"columns\": {{ \"{Example(absent)}\": \"the heading\" }} }} }} }}.");
    }

    /// <summary>A column to speak of: the first, but not a line of the device where the result is read.</summary>
    private static string Example(ImmutableArray<string> absent) => absent.FirstOrDefault(column => column is not ("control_line" or "test_line")) ?? absent[0];

    /// <summary>In which zone times were taken, and whether that could matter.</summary>
    private static string TimeZone(InspectResult result)
    {
        if (result.ProgramFile["timeZone"] is { } zone) return $"time zone: {zone}, as program.json states; times without an offset from UTC are taken in it";
        var columns = result.Exports.SelectMany(export => export.Columns).ToList();
        return (columns.Any(column => column.WithOffset > 0), columns.Any(column => column.WithoutOffset > 0)) switch
        {
            (true, false) => "time zone: none stated, and none needed: every time of day carries an offset from UTC",
            (true, true) => "time zone: none stated, but needed: some times of day carry an offset from UTC and others none",
            _ => "time zone: none stated; times without an offset from UTC are taken in the program's time zone, so as they are written. That is harmless unless other times carry an offset, or sites lie in different zones.",
        };
    }

    /// <summary>What a file is, in the order in which one would ask for it.</summary>
    private static IEnumerable<string> Form(FileUnderstanding file)
    {
        yield return file.Rows == 0 ? "rows not read" : $"{Terminal.Show.Count(file.Rows)} {(file.Rows == 1 ? "row" : "rows")}";
        yield return file.Format;
        if (file.Encoding is not null) yield return file.Encoding;
        if (file.Delimiter is not null) yield return $"delimiter {file.Delimiter}";
        if (file.Sheet is not null) yield return $"sheet \"{file.Sheet}\"";
        if (file.HeadingLine is { } line and > 1) yield return $"headings on line {Terminal.Show.Count(line)}";
        if (file.LinesBeforeHeadings > 0) yield return file.LinesBeforeHeadings == 1 ? "1 line before them not read" : $"{Terminal.Show.Count(file.LinesBeforeHeadings)} lines before them not read";
    }

    private static string UnderstoodAs(ColumnUnderstanding column)
    {
        var parts = new List<string>();
        if (!column.Words.IsDefaultOrEmpty)
            parts.Add(string.Join(", ", column.Words.Select(word => $"{word.Word} = {(word.TakenFor.Length == 0 ? "not recorded" : word.TakenFor)} ({Terminal.Show.Count(word.Rows)})")));
        if (column.UnknownWords > 0) parts.Add(Unknown(column));
        if (column.DateOrder is { } order) parts.Add($"{DiagnosticLines.Words(order)} ({column.DateOrderWhy})");
        if (column.FirstDay is { } first && column.LastDay is { } last)
            parts.Add($"{first.ToString("O", System.Globalization.CultureInfo.InvariantCulture)} to {last.ToString("O", System.Globalization.CultureInfo.InvariantCulture)}");
        if (column.DifferentLevels > 0)
        {
            var more = column.DifferentLevels - column.Levels.Length;
            var shown = string.Join(", ", column.Levels.Select(level => $"{level.Name} ({Terminal.Show.Count(level.Rows)})"));
            parts.Add($"{Terminal.Show.Count(column.DifferentLevels)} different" + (shown.Length == 0
                ? ", not shown here as they could be names of people"
                : $": {shown}{(more > 0 ? $" and {Terminal.Show.Count(more)} more" : "")}"));
        }

        return string.Join("; ", parts);
    }

    private static string Unknown(ColumnUnderstanding column)
    {
        var rest = column.UnknownWords - column.UnknownWordsShown.Sum(word => word.Rows);
        var shown = string.Join(", ", column.UnknownWordsShown.Select(word => $"\"{word.Word}\" ({Terminal.Show.Count(word.Rows)})"));
        return (shown.Length > 0 ? $"not known: {shown}" : "")
            + (shown.Length > 0 && rest > 0 ? "; " : "")
            + (rest == 0 ? "" : rest == 1 ? "1 row with a word that is not known" : $"{Terminal.Show.Count(rest)} rows with words that are not known");
    }

    /// <summary>A share in whole percent, but never 0 or 100 % where it is not.</summary>
    private static string Share(long part, long all) => part == all ? "100 %" : part == 0 ? "0 %"
        : 200 * part < all ? "under 1 %" : 200 * (all - part) < all ? "over 99 %"
        : FormattableString.Invariant($"{100.0 * part / all:0} %");
}
