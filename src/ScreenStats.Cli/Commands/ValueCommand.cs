using ScreenStats.Cli.Terminal;
using ScreenStats.Cli.Terminal.Worth;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Reporting.Files;

namespace ScreenStats.Cli.Commands;

/// <summary><c>value</c>: whether screening is worth it, from a program's own counts and costs.</summary>
internal sealed class ValueCommand : ProgramCommand
{
    public ValueCommand()
        : base("value", "Whether screening is worth it: what it did and cost, what to choose, when it turns, how sure that is",
            "screenstats value my-program", "screenstats value my-program/program.json --as-of 2026-03-31 --json")
    {
        TakeReadingOptions();
        TakeJson();
    }

    public override int Run(Invocation invocation)
    {
        var program = Open(invocation);
        var reading = Read(invocation, program);
        invocation.Say([.. reading.Diagnostics.Where(found => found.Severity == Severity.Error)]);
        if (program.Settings.Report.SuppressBelow > 1)
            invocation.Say("note: reports of this program hide small counts (report.suppressBelow); this answer hides none. Who may see it is for the program's owner to say.");
        var findings = invocation.Progress.During(() => reading.Tally.Evaluate(program.Settings, invocation.Progress));
        if (WantsJson(invocation)) invocation.Output.Write(JsonText.Of(findings.Worth, indented: false) + "\n");
        else WorthScreen.Render(findings, invocation.Screen);
        return ExitCode.Done;
    }
}
