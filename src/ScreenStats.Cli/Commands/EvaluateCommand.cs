using System.CommandLine;
using ScreenStats.Cli.Terminal;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting;

namespace ScreenStats.Cli.Commands;

/// <summary><c>evaluate</c>: the main job, exports in and a report out.</summary>
internal sealed class EvaluateCommand : ProgramCommand
{
    // The first few fit on a screen; all of them stand in the report.
    private const int MostSteps = 3;

    private readonly Option<string> place;
    private readonly Option<bool> setAsideText;

    public EvaluateCommand()
        : base("evaluate", "The whole evaluation of a program: exports in, a report out",
            "screenstats evaluate my-program", "screenstats evaluate my-program/program.json --out report-march --as-of 2026-03-31")
    {
        place = TakeOption("--out", "folder", "Where the report is put. Replaced only if it is a report of ours. Default report.");
        TakeReadingOptions();
        setAsideText = TakeSwitch("--set-aside-text", "Put the text of rows set aside into set-aside.csv; it may name people.");
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var written = invocation.Text(place) ?? "report";
        var folder = invocation.Environment.OutputPathOf("--out", written);
        var withText = invocation.Parsed.GetValue(setAsideText);
        var program = Open(invocation);
        Report.CheckFolder(folder);

        var reading = Read(invocation, program, withText);
        DiagnosticLines.Write(invocation.Errors, reading.Diagnostics);
        var findings = reading.Tally.Evaluate(program.Settings);
        Report.Write(findings, folder, reading.ToReportInputs(Options(AsOf(invocation), withText)), invocation.Environment.Cancelled);

        if (WantsJson(invocation)) invocation.Output.Write(File.ReadAllText(Path.Combine(folder, "findings.json")));
        else Render(findings, written, invocation.Screen);
        return ExitCode.Done;
    }

    // The place of the report and the number of threads change no byte of it, so they are not options of the report.
    private static Dictionary<string, string> Options(string asOf, bool withText)
    {
        var options = new Dictionary<string, string>(StringComparer.Ordinal);
        if (asOf.Length > 0) options["as-of"] = asOf;
        if (withText) options["set-aside-text"] = "true";
        return options;
    }

    private static void Render(Findings findings, string written, Screen screen)
    {
        screen.Title(findings.Settings.Title);
        screen.Line($"{Show.Count(findings.Ledger.Counted)} of {Show.Count(findings.Ledger.Read)} rows counted"
            + (findings.Ledger.SetAside > 0 ? $", {Show.Count(findings.Ledger.SetAside)} set aside (see set-aside.csv)" : ""));
        foreach (var answer in findings.Answers.Questions)
        {
            screen.Line();
            screen.Title(answer.Question);
            screen.Text(answer.Text);
            if (answer.Condition.Length > 0) screen.Text(answer.Condition);
        }

        screen.Line();
        Flagged("Lots", findings.Lots.Where(lot => lot.Flag != Flag.None).Select(lot => $"{lot.Lot} ({LevelNames.Of(lot.Flag)})"), screen);
        Flagged("Sites", findings.Sites.Where(site => site.Flag != Flag.None).Select(site => $"{site.Site} ({LevelNames.Of(site.Flag)})"), screen);
        if (!findings.Answers.NextSteps.IsEmpty)
        {
            screen.Line();
            screen.Title("What to do next");
            foreach (var step in findings.Answers.NextSteps.Take(MostSteps)) screen.Text($"{step.Rank}. {step.Text}");
        }

        screen.Line();
        screen.Line($"The whole report: {Path.Combine(written, "report.html")}");
        screen.Caution();
    }

    private static void Flagged(string what, IEnumerable<string> names, Screen screen)
    {
        var list = string.Join(", ", names);
        if (list.Length == 0) screen.Line($"{what} that need looking into: none");
        else screen.Attention($"{what} that need looking into: {list}");
    }
}
