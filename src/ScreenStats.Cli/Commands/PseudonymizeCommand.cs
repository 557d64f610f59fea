using System.Collections.Immutable;
using System.CommandLine;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Cli.Commands;

/// <summary><c>pseudonymize</c>: what names people in an export becomes keyed pseudonyms, so that exports still link.</summary>
internal sealed class PseudonymizeCommand : RunnerCommand
{
    private readonly Argument<string> file;
    private readonly Option<string> columns, operatorColumns, keyFile, target, drop, generalise, dateOrder, sheet;
    private readonly Option<bool> createKey;

    public PseudonymizeCommand()
        : base("pseudonymize", "Keyed pseudonyms in place of what names people, so that exports still link",
            "screenstats pseudonymize tests.csv --columns badge --key-file ../key --create-key --out screening.csv",
            "screenstats pseudonymize lab.xlsx --columns patient --drop name --key-file ../key --out confirmatory.csv")
    {
        file = TakeArgument("file", "An export in any format that evaluate reads: delimited text, a workbook (.xlsx), Parquet (.parquet), newline-delimited FHIR (.ndjson), each also as .gz. The result is text.");
        columns = TakeOption("--columns", "a,b", "Headings of the columns that name the people screened.");
        operatorColumns = TakeOption("--operator-columns", "a,b", "Headings of the columns that name operators; their pseudonyms cannot be linked to those of the people screened.");
        keyFile = TakeOption("--key-file", "file", "The key: the same for every export of a program. Who has it can link pseudonyms to people; keep it apart from the exports.", required: true);
        createKey = TakeSwitch("--create-key", "Make the key: 256 random bits in a new file that only its owner can read.");
        target = TakeOption("--out", "file", "The file to be written, readable by its owner only. Nothing is written over.", required: true);
        drop = TakeOption("--drop", "a,b", "Headings of columns to leave out.");
        generalise = TakeOption("--generalise", "a:day,b:year", "Columns of dates to make coarser: day, week (its Monday), month or year.");
        dateOrder = TakeOption("--date-order", "order", "iso, day-first or month-first in these columns. Default: as the whole column shows.");
        dateOrder.CompletionSources.Add("iso", "day-first", "month-first");
        sheet = TakeOption("--sheet", "name", "The sheet of a workbook that is read. Default: the one with the headings named.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var request = new PseudonymizeRequest
        {
            Source = invocation.Environment.PathOf(invocation.Text(file)),
            Target = invocation.Environment.OutputPathOf("--out", invocation.Text(target)!),
            KeyFile = invocation.Environment.OutputPathOf("--key-file", invocation.Text(keyFile)!),
            CreateKey = invocation.Parsed.GetValue(createKey),
            Columns = Headings("--columns", invocation.Text(columns)),
            OperatorColumns = Headings("--operator-columns", invocation.Text(operatorColumns)),
            Drop = Headings("--drop", invocation.Text(drop)),
            Generalise = [.. Headings("--generalise", invocation.Text(generalise)).Select(Coarser)],
            Sheet = invocation.Text(sheet),
            DateOrder = Order(invocation.Text(dateOrder)),
        };
        if (request.Columns.IsEmpty && request.OperatorColumns.IsEmpty)
            throw new UsageException("name at least one column: --columns for the people screened, --operator-columns for operators.");

        var result = invocation.Progress.During(() => Pseudonymizer.Write(request, invocation.Progress, invocation.Environment.Cancelled));

        if (ReadAs(result, request) is { } made) invocation.Say(made);
        invocation.Say(result.Diagnostics);
        if (WantsJson(invocation)) invocation.Output.Write(ResultJson.Write(result));
        else Render(result, request, invocation);
        return ExitCode.Done;
    }

    private static ImmutableArray<string> Headings(string name, string? text)
    {
        if (text is null) return [];
        var parts = text.Split(',', StringSplitOptions.TrimEntries);
        return parts.Any(part => part.Length == 0) ? throw new UsageException($"{name}: write headings separated by commas, such as badge,name.") : [.. parts];
    }

    private static (string Column, DatePrecision Precision) Coarser(string text)
    {
        var colon = text.LastIndexOf(':');
        DatePrecision? precision = colon <= 0 ? null : text[(colon + 1)..] switch
        {
            "day" => DatePrecision.Day,
            "week" => DatePrecision.Week,
            "month" => DatePrecision.Month,
            "year" => DatePrecision.Year,
            _ => null,
        };
        return precision is { } coarse
            ? (text[..colon], coarse)
            : throw new UsageException($"--generalise: \"{text}\" must be a heading, a colon, and day, week, month or year, such as birth:year.");
    }

    private static DateOrder? Order(string? text) => text switch
    {
        null => null,
        "iso" => DateOrder.Iso,
        "day-first" => DateOrder.DayFirst,
        "month-first" => DateOrder.MonthFirst,
        _ => throw new UsageException($"--date-order: \"{text}\" must be iso, day-first or month-first."),
    };

    /// <summary>What was made of a file that is not plain text.</summary>
    private static string? ReadAs(PseudonymizeResult result, PseudonymizeRequest request)
    {
        var name = Path.GetFileName(request.Source);
        if (result.Format == "delimited text") return null;
        var place = result.HeadingLine is { } line ? $", headings on line {Show.Count(line)}" : result.Format.StartsWith("Parquet", StringComparison.Ordinal) ? "" : $", of which only {string.Join(", ", result.Columns.Select(column => column.Heading))} are written";
        return $"note: {name} was read as {result.Format}{(result.Sheet is null ? "" : $", sheet \"{result.Sheet}\"")}{place}; the result is CSV in UTF-8.";
    }

    private void Render(PseudonymizeResult result, PseudonymizeRequest request, Invocation invocation)
    {
        var screen = invocation.Screen;
        screen.Title($"{Show.Count(result.Rows)} {(result.Rows == 1 ? "row" : "rows")} written to {invocation.Text(target)}");
        screen.Line(result.Format.StartsWith("delimited text", StringComparison.Ordinal)
            ? $"read as {result.Encoding}, delimiter {result.Delimiter}; written as UTF-8 with the same delimiter, readable by its owner only"
            : $"read as {result.Format}; written as CSV in UTF-8, readable by its owner only");
        if (result.LinesDropped > 0) screen.Line($"{Show.Count(result.LinesDropped)} {(result.LinesDropped == 1 ? "line" : "lines")} above the headings left out");
        if (result.TotalsDropped > 0) screen.Line($"{Show.Count(result.TotalsDropped)} {(result.TotalsDropped == 1 ? "line" : "lines")} of totals left out");
        if (result.ResourcesDropped > 0) screen.Line($"{Show.Count(result.ResourcesDropped)} {(result.ResourcesDropped == 1 ? "resource" : "resources")} not to be read left out");
        screen.Table(
            [new("column", true), new("heading"), new("now"), new("replaced", true), new("blank", true), new("not a date", true)],
            result.Columns.Select(column => new[]
            {
                Show.Count(column.Number), column.Heading.Length > 0 ? column.Heading : "(not shown)", Now(column.Treatment), Counted(column, column.Replaced),
                Counted(column, column.Blank), column.Treatment == ColumnTreatment.Generalised ? Show.Count(column.Unreadable) : "",
            }));
        screen.Line();
        if (result.KeyCreated) screen.Line($"The key is in {invocation.Text(keyFile)}. Use it for the other exports of this program, without --create-key, and keep it apart from them.");
        else if (Path.GetDirectoryName(request.KeyFile) == Path.GetDirectoryName(request.Target)) screen.Attention("The key lies in the same folder as the result: do not let it leave with it.");
        screen.Text("Pseudonyms are not anonymity: who has the key, or knows when and where somebody was tested, can find the person. Local data-protection rules decide who may see this file.");
    }

    private static string Counted(PseudonymizedColumn column, long count) => column.Treatment is ColumnTreatment.Kept or ColumnTreatment.Dropped ? "" : Show.Count(count);

    private static string Now(ColumnTreatment treatment) => treatment switch
    {
        ColumnTreatment.Pseudonymized => "pseudonyms",
        ColumnTreatment.OperatorPseudonymized => "pseudonyms of operators",
        ColumnTreatment.Dropped => "left out",
        ColumnTreatment.Generalised => "coarser dates",
        _ => "as it was",
    };
}
