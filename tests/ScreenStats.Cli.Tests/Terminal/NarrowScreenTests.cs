using System.Diagnostics;
using System.Text.RegularExpressions;
using ScreenStats.Cli.Terminal;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Terminal;

/// <summary>What <c>evaluate</c> prints on a screen of 80 columns, in a file, and on a terminal that knows nothing but letters.</summary>
public sealed partial class NarrowScreenTests : IDisposable
{
    private static readonly RunnerEnvironment Screen = new() { OutputIsTerminal = true, ErrorIsTerminal = true, Width = 80 };
    private static readonly RunnerEnvironment Dumb = Screen with { Variable = name => name == "TERM" ? "dumb" : null };
    private readonly ProgramOnDisk program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public void Every_line_on_a_screen_fits_warnings_among_them()
    {
        Damage();

        var run = Runner.In(Screen with { Folder = program.Root }, "evaluate", "works");

        run.Code.Should().Be(0, run.Errors);
        Fit(run.Output);
        Fit(run.Errors);
        run.Errors.Should().Contain("warning: ");
        Shown(run.Output).Should().Contain("Screening is not diagnosis: a positive or inconclusive screen needs a\nconfirmatory test, ", "the caution flows as one paragraph");
    }

    [Fact]
    public void Every_line_of_a_report_that_hides_small_counts_fits()
    {
        var run = Runner.In(Screen with { Folder = program.Root }, "evaluate", "works", "--suppress-below", "5");

        run.Code.Should().Be(0, run.Errors);
        Fit(run.Output);
        Fit(run.Errors);
        run.Errors.Should().Contain("--earlier-release");
    }

    [Fact]
    public void A_long_path_stands_alone_on_its_line_and_whole()
    {
        var folder = Path.Combine(program.Root, "a folder with a name that goes on and on", "and another one below it that does the same", "report");
        Directory.CreateDirectory(Path.GetDirectoryName(folder)!);

        var run = Runner.In(Screen with { Folder = program.Root }, "evaluate", "works", "--out", folder);

        run.Output.Split('\n').Should().Contain(Path.Combine(folder, "report.html"));
        Shown(run.Output).Split('\n').Where(line => line.Length > 80).Should().Equal(Path.Combine(folder, "report.html"));
    }

    [Fact]
    public void Refusals_fit()
    {
        var run = Runner.In(Screen with { Folder = program.Root }, "evaluate", "works", "--by", "shift");
        Fit(run.Errors);
        program.Write("program.json", """{ "policy": { "confirmWithinHour": 72 } }""");
        var refused = Runner.In(Screen with { Folder = program.Root }, "evaluate", "works");

        refused.Code.Should().Be(1);
        Fit(refused.Errors);
    }

    [Fact]
    public void A_dumb_terminal_gets_neither_sequences_nor_carriage_returns()
    {
        Damage();

        var run = Runner.In(Dumb with { Folder = program.Root }, "evaluate", "works");

        run.Code.Should().Be(0, run.Errors);
        (run.Output + run.Errors).Should().NotContain("\u001b").And.NotContain("\r");
        Fit(run.Output);
    }

    [Fact]
    public void A_terminal_hears_of_reading_evaluating_and_writing_and_a_file_of_none()
    {
        var seen = Runner.In(Screen with { Folder = program.Root }, "evaluate", "works").Errors;

        seen.Should().Contain("\rreading ").And.Contain("\revaluating: trend").And.Contain("\rwriting ");
        Runner.In(program.Here, "evaluate", "works").Errors.Should().NotContainAny("reading ", "evaluating", "writing ");
    }

    [Fact]
    public async Task The_executable_writes_lines_of_80_columns_into_a_file()
    {
        Damage();

        var (code, output) = await Start("sh", "-c", $"dotnet '{Executable}' evaluate works 2>&1");

        code.Should().Be(0, output);
        output.Should().NotContain("\u001b").And.NotContain("\r").And.Contain("warning: ");
        Fit(output);
    }

    [Fact]
    public async Task The_executable_on_a_real_dumb_terminal_of_80_columns_sends_letters_and_line_ends_only()
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("The program script, which lends a terminal, is called otherwise here.");
        Damage();

        var (code, dumb) = await Terminal("dumb");
        code.Should().Be(0, dumb);
        dumb.Should().NotContain("\u001b");
        dumb.Replace("\r\n", "\n", StringComparison.Ordinal).Should().NotContain("\r").And.Contain("Screening is not diagnosis");
        Fit(dumb.Replace("\r\n", "\n", StringComparison.Ordinal));

        var (_, smart) = await Terminal("xterm");
        smart.Should().Contain("\u001b[1m", "a terminal that knows more gets bold titles").And.Contain("\revaluating: ");
    }

    private static string Executable => Path.Combine(AppContext.BaseDirectory, "ScreenStats.Cli.dll");

    private Task<(int Code, string Output)> Terminal(string kind) =>
        Start("script", "-qec", $"stty cols 80; NO_COLOR= TERM={kind} dotnet '{Executable}' evaluate works", "/dev/null");

    private async Task<(int Code, string Output)> Start(string name, params string[] args)
    {
        var start = new ProcessStartInfo(name, args) { WorkingDirectory = program.Root, RedirectStandardOutput = true, RedirectStandardInput = true };
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, output);
    }

    // A long title, long names of sites and lots, and rows that cannot be read.
    private void Damage()
    {
        program.Write("program.json", """{ "title": "Works with a title that is longer than any screen that was ever sold with eighty columns", "timeZone": "Etc/UTC" }""");
        program.Write("screening.csv", ProgramOnDisk.Screening
            + "p5,The northern yard with the long name beside the river and the railway,2026-01-07T08:00,positive,A-very-long-lot-number-that-goes-on-1234567890\np6,Dock,2026-01-07T08:00,maybe,A1\np7,Dock,never,negative,A1\n");
    }

    private static string Shown(string output) => Sequences().Replace(output, "");

    private static void Fit(string output) =>
        Shown(output).Split('\n').SelectMany(line => line.Split('\r')).Where(line => line.Length > 80 && line.Trim().Contains(' ', StringComparison.Ordinal)).Should().BeEmpty();

    [GeneratedRegex("\u001b\\[[0-9;]*m")]
    private static partial Regex Sequences();
}
