using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Printing;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting;

namespace ScreenStats.Cli.Commands;

/// <summary><c>evaluate</c>: the main job, exports in and a report out.</summary>
internal sealed class EvaluateCommand : ProgramCommand
{
    // The first few fit on a screen; all of them stand in the report.
    private const int MostSteps = 3;

    // What is to be done stands on the first screen; whether sites differ and whether it gets better can be read below it.
    private const int FirstAnswers = 4;

    private const string NoRelease = "none";

    private readonly Option<string> place;
    private readonly Option<bool> setAsideText;
    private readonly Option<string> suppressBelow;
    private readonly Option<string> earlierRelease;
    private readonly Option<string> since;
    private readonly Option<string> format;
    private readonly Option<string> by;

    public EvaluateCommand()
        : base("evaluate", "The whole evaluation of a program: exports in, a report out",
            "screenstats evaluate my-program", "screenstats evaluate my-program/program.json --out report-march --as-of 2026-03-31")
    {
        place = TakeOption("--out", "folder", "Where the report is put. Replaced only if it is a report of ours. Default report.");
        TakeReadingOptions();
        setAsideText = TakeSwitch("--set-aside-text", "Put the text of rows set aside into set-aside.csv; it may name people.");
        suppressBelow = TakeOption("--suppress-below", "number", "Hide counts from 1 to one less, and whatever would give one away; 0 hides nothing. Default: report.suppressBelow in the program file, else 0.");
        earlierRelease = TakeOption("--earlier-release", "folder", "With small counts hidden: a report of the same program that readers have already, so that the difference between the two gives nothing away; none for no such report. Default: the report that --out replaces, where it hides small counts and has a site of this program.");
        since = TakeOption("--since", "file", "Say what has changed since an earlier evaluation of this program: its findings.json, or the folder of its report. With small counts hidden it must be a whole report that hides as much, and is the earlier release too.");
        format = TakeOption("--format", "kind", "pdf: print the report to report.pdf too, by the Chromium of this machine (found in PATH, or named in SCREENSTATS_CHROMIUM).");
        format.CompletionSources.Add("pdf");
        by = TakeOption("--by", "what", "By what runs are compared side by side: site, operator, kit (the screening device of the lot), specimen, or region (from the export of sites). Default: report.compareBy in the program file, else site.");
        by.CompletionSources.Add([.. Enum.GetValues<CompareBy>().Select(Word)]);
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var written = invocation.Text(place) ?? "report";
        var folder = invocation.Environment.OutputPathOf("--out", written);
        var withText = invocation.Parsed.GetValue(setAsideText);
        if (invocation.Text(format) is { } kind && kind != "pdf") throw new UsageException("--format: the report is written as a page, tables, a workbook and data anyway; write pdf for a print too.");
        var chromium = invocation.Text(format) is null ? null : ChromiumPrinter.Find(invocation.Environment);
        var program = Open(invocation);
        if (invocation.Text(suppressBelow) is { } threshold)
        {
            var report = program.Settings.Report with { SuppressBelow = (int)Figures.Whole("--suppress-below", threshold, 0, 1_000_000) };
            program = program.With(program.Settings with { Report = report });
        }

        if (invocation.Text(by) is { } grouping)
        {
            program = program.With(program.Settings with { Report = program.Settings.Report with { CompareBy = By(grouping) } });
        }

        var hides = program.Settings.Report.SuppressBelow > 1;
        if (withText && hides) throw new UsageException("--set-aside-text shows single rows, so it cannot go with hidden small counts; leave it out, or write a report with --suppress-below 0 for yourself.");
        var wanted = invocation.Text(earlierRelease);
        var earlier = wanted is { } given && given != NoRelease ? invocation.Environment.PathOf(given) : null;
        if (wanted is not null && !hides) throw new UsageException("--earlier-release says what small counts must stay hidden, so it needs --suppress-below with a number above 1.");
        Report.CheckFolder(folder);
        if (earlier is not null) Report.ReadRelease(earlier);
        var compared = invocation.Text(since) is { } named ? invocation.Environment.PathOf(named) : null;
        var before = compared is null ? null : Report.ReadEvaluation(compared);
        if (compared is not null && hides) earlier = ReleaseOf(compared, earlier, wanted, folder);
        var replaced = hides && wanted is null && compared is null && Report.IsRelease(folder) ? folder : null;

        var reading = Read(invocation, program, withText);
        invocation.Say(reading.Diagnostics);
        if (replaced is not null && Report.HasSiteOf(replaced, reading.Tally)) earlier = replaced;
        if (hides) invocation.Say(About(earlier, written, wanted is null && compared is null));
        var options = Options(AsOf(invocation), withText, invocation.Text(suppressBelow) ?? "", earlier is not null, before is not null, invocation.Text(by) ?? "");
        var findings = invocation.Progress.During(() =>
        {
            var made = reading.Tally.EvaluateForRelease(program.Settings, earlier, invocation.Progress, before);
            Report.Write(made, folder, reading.ToReportInputs(options), invocation.Progress, invocation.Environment.Cancelled);
            return made;
        });

        var fault = chromium is null ? null : Print(invocation, chromium, folder);
        if (WantsJson(invocation)) invocation.Output.Write(File.ReadAllText(Path.Combine(folder, "findings.json")));
        else Render(findings, written, chromium is not null && fault is null, invocation.Screen);
        if (fault is null) return ExitCode.Done;
        invocation.Say($"warning: {Report.PrintName} was not made: {fault} The report itself is whole.");
        return invocation.Environment.Cancelled.IsCancellationRequested ? ExitCode.Cancelled : ExitCode.Usage;
    }

    // The report stands already: whatever becomes of the print is said as a warning and by the exit code, as where there is no Chromium.
    private static string? Print(Invocation invocation, string chromium, string folder)
    {
        try
        {
            return invocation.Progress.During(() => ChromiumPrinter.Print(
                chromium, Path.Combine(folder, "report.html"), Path.Combine(folder, Report.PrintName), invocation.Time, invocation.Environment.Cancelled));
        }
        catch (OperationCanceledException)
        {
            return "it was cancelled.";
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException || DiskFault.Full(failure) is not null)
        {
            return DiskFault.Full(failure) is null ? $"a file cannot be used: {failure.Message}" : "there is no room for it on the disk.";
        }
    }

    // What has changed is told from two reports, so readers are taken to have both: the one compared with is the earlier release.
    private static string ReleaseOf(string compared, string? earlier, string? wanted, string folder)
    {
        var own = Directory.Exists(compared) ? compared : Path.GetDirectoryName(compared)!;
        Report.ReadRelease(own);
        if (own != compared && Path.GetFileName(compared) != "findings.json")
            throw new UsageException("with small counts hidden, --since must name the folder of a whole report, or the findings.json in it: what is compared must be what readers have; another file beside it is not.");
        if (wanted is not null && (earlier is null || !SamePlace(earlier, own)))
            throw new UsageException("with small counts hidden, the report that --since names is the earlier release too, and only one can be taken into account; leave --earlier-release out.");
        if (!SamePlace(folder, own) && Report.IsRelease(folder))
        {
            throw new UsageException(
                "the report in the folder of --out hides small counts too and is not the one that --since names, and only one can be taken into account as an earlier release; write to another folder, or remove that report if nobody has it.");
        }

        return own;
    }

    private static bool SamePlace(string one, string other) => Path.TrimEndingDirectorySeparator(one) == Path.TrimEndingDirectorySeparator(other);

    private static CompareBy By(string text)
    {
        foreach (var one in Enum.GetValues<CompareBy>())
        {
            if (text == Word(one)) return one;
        }

        throw new UsageException($"--by: \"{text}\" is not known; write one of {string.Join(", ", Enum.GetValues<CompareBy>().Select(Word))}.");
    }

    private static string Word(CompareBy by) => by.ToString().ToLowerInvariant();

    // Two releases together can tell what neither tells alone, so the user must know which were compared.
    private static string About(string? earlier, string written, bool byItself) =>
        earlier is null ? "note: no earlier report was taken into account. If readers have one of this program, name it with --earlier-release: the difference between two reports can give a hidden count away."
        : byItself ? $"note: the report in {written}, which this one replaces, was taken into account as an earlier release: what it hid stays hidden. Say --earlier-release none if nobody has it."
        : "note: the earlier report was taken into account: what it hid stays hidden.";

    // The place of the report and the number of threads change no byte of it, so they are not options of the report.
    private static Dictionary<string, string> Options(string asOf, bool withText, string threshold, bool compared, bool since, string grouping)
    {
        var options = new Dictionary<string, string>(StringComparer.Ordinal);
        if (asOf.Length > 0) options["as-of"] = asOf;
        if (withText) options["set-aside-text"] = "true";
        if (threshold.Length > 0 && threshold != "0") options["suppress-below"] = threshold;
        if (compared) options["earlier-release"] = "true";
        if (since) options["since"] = "true";
        if (grouping.Length > 0) options["by"] = grouping;
        return options;
    }

    private static void Answers(IEnumerable<Answer> answers, Screen screen)
    {
        foreach (var answer in answers)
        {
            screen.Line();
            screen.Title(answer.Question);
            screen.Text(answer.InOneSentence);
        }
    }

    private static void Render(Findings findings, string written, bool print, Screen screen)
    {
        screen.Title(findings.Settings.Title);
        if (findings.Disclosure is { } disclosure)
        {
            screen.Line($"Small counts are hidden: those from 1 to {Show.Count(disclosure.SuppressBelow - 1)} and what would give one away ({Show.Count(disclosure.HiddenCounts)} counts).");
            screen.Line("Limits of the whole program and its devices are widened for clusters in coarse steps; those of sites, lots and weeks are not widened, and too narrow where the same people were tested again and again.");
            if (disclosure.NotProtected > 0) screen.Attention($"{Show.Count(disclosure.NotProtected)} counts could not be protected: the earlier release gives them away");
        }
        else
        {
            screen.Line($"{Show.Count(findings.Ledger.Counted)} of {Show.Count(findings.Ledger.Read)} rows counted"
                + (findings.Ledger.SetAside > 0 ? $", {Show.Count(findings.Ledger.SetAside)} set aside (see set-aside.csv)" : ""));
        }

        Answers(findings.Answers.Questions.Take(FirstAnswers), screen);
        screen.Line();
        Flagged("Lots", findings.Lots.Where(lot => lot.Flag != Flag.None).Select(lot => $"{lot.Lot} ({LevelNames.Of(lot.Flag)})"), screen);
        Flagged("Sites", findings.Sites.Where(site => site.Flag != Flag.None).Select(site => $"{site.Site} ({LevelNames.Of(site.Flag)})"), screen);
        if (!findings.Answers.NextSteps.IsEmpty)
        {
            screen.Line();
            screen.Title("What to do next");
            foreach (var step in findings.Answers.NextSteps.Take(MostSteps)) screen.Text($"{step.Rank}. {step.Text}");
            var more = findings.Answers.NextSteps.Length - MostSteps;
            if (more > 0) screen.Line($"{Show.Count(more)} more in the report");
        }

        Answers(findings.Answers.Questions.Skip(FirstAnswers), screen);

        screen.Line();
        screen.Line("The whole report, with the conditions under which the answers hold:");
        screen.Verbatim(Path.Combine(written, "report.html"));
        if (print) screen.Verbatim(Path.Combine(written, Report.PrintName));
        screen.Caution();
    }

    private static void Flagged(string what, IEnumerable<string> names, Screen screen)
    {
        var list = string.Join(", ", names);
        if (list.Length == 0) screen.Line($"{what} that need looking into: none");
        else screen.Attention($"{what} that need looking into: {list}");
    }
}
