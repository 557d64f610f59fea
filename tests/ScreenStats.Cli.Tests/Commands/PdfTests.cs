using System.Text;
using ScreenStats.Cli.Printing;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests.Commands;

/// <summary>evaluate --format pdf up to the browser, which tests/ScreenStats.Browser.Tests starts: here a small script stands for it.</summary>
public sealed class PdfTests : IDisposable
{
    private readonly ProgramOnDisk program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public void Without_a_Chromium_it_is_refused_before_anything_is_read()
    {
        var run = Runner.In(With(null), "evaluate", "nowhere", "--format", "pdf");

        run.Code.Should().Be(2);
        run.Errors.Should().Contain("needs a Chromium").And.Contain(ChromiumPrinter.Variable);
    }

    [Fact]
    public void A_Chromium_that_is_named_and_not_there_is_refused()
    {
        var run = Runner.In(With(Path.Combine(program.Root, "none")), "evaluate", "works", "--format", "pdf");

        run.Code.Should().Be(2);
        run.Errors.Should().Contain("names a file that is not there");
    }

    [Fact]
    public void Another_format_is_refused()
    {
        var run = Runner.In(With(null), "evaluate", "works", "--format", "docx");

        run.Code.Should().Be(2);
        run.Errors.Should().Contain("--format").And.Contain("pdf");
    }

    [Fact]
    public void The_print_stands_in_the_folder_which_can_be_replaced_again()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        var browser = Script("for one in \"$@\"; do case \"$one\" in --print-to-pdf=*) printf '%%PDF-1.4 /CreationDate (D:20261126064330+00)' > \"${one#*=}\";; esac; done");
        var run = Runner.In(With(browser), "evaluate", "works", "--format", "pdf");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("report.pdf");
        File.ReadAllText(Path.Combine(program.Report, "report.pdf")).Should().Be("%PDF-1.4 /CreationDate (D:20000101000000+00)", "no clock is in a report");
        File.ReadAllText(Path.Combine(program.Report, "manifest.json")).Should().NotContain("report.pdf", "another Chromium makes other bytes");
        Runner.In(program.Here, "evaluate", "works").Code.Should().Be(0);
        File.Exists(Path.Combine(program.Report, "report.pdf")).Should().BeFalse("a print of before would say something else than the report");
    }

    [Theory]
    [InlineData("exit 3", "ended with code 3")]
    [InlineData("exit 0", "ended without one")]
    [InlineData("for one in \"$@\"; do case \"$one\" in --print-to-pdf=*) echo no > \"${one#*=}\";; esac; done", "no PDF")]
    public void Where_the_browser_fails_the_report_is_there_and_one_message_says_what_is_not(string script, string message)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        var run = Runner.In(With(Script(script)), "evaluate", "works", "--format", "pdf");

        run.Code.Should().Be(2, "the data can answer: it is this machine that makes no print");
        run.Errors.Should().Contain("report.pdf was not made").And.Contain(message);
        File.Exists(Path.Combine(program.Report, "report.html")).Should().BeTrue();
        File.Exists(Path.Combine(program.Report, "report.pdf")).Should().BeFalse();
    }

    [Fact]
    public async Task A_print_that_is_cancelled_leaves_the_report_and_says_so()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The script that stands for Chromium is one of a shell.");
        using var wish = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var begun = Path.Combine(program.Root, "begun");
        var work = Task.Factory.StartNew(
            () => Runner.In(With(Script($": > '{begun}'; sleep 1000")) with { Cancelled = wish.Token }, "evaluate", "works", "--format", "pdf"), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        while (!File.Exists(begun) && !work.IsCompleted) await Task.Delay(10, TestContext.Current.CancellationToken);
        await wish.CancelAsync();
        var run = await work;

        run.Code.Should().Be(130, run.Errors);
        run.Errors.ReplaceLineEndings(" ").Should().Contain("report.pdf was not made: it was cancelled. The report itself is whole.").And.NotContain("nothing was written");
        File.Exists(Path.Combine(program.Report, "report.html")).Should().BeTrue();
        Directory.GetFiles(program.Report, "report.pdf*").Should().BeEmpty();
    }

    [Fact]
    public void Half_a_print_that_an_ended_run_left_does_not_stand_in_the_way_of_the_next_report()
    {
        Runner.In(program.Here, "evaluate", "works").Code.Should().Be(0);
        File.WriteAllText(Path.Combine(program.Report, "report.pdf.part"), "%PDF");

        Runner.In(program.Here, "evaluate", "works").Code.Should().Be(0);
        Directory.GetFiles(program.Report, "report.pdf*").Should().BeEmpty();
    }

    [Theory]
    [InlineData("/CreationDate (D:20261126064330+00'00')\n/ModDate (D:20261126064331+00'00')", "/CreationDate (D:20000101000000+00'00')\n/ModDate (D:20000101000000+00'00')")]
    [InlineData("/ModDate (D:20261126064331) /ModDate (D:20251126064331)", "/ModDate (D:20000101000000) /ModDate (D:20000101000000)")]
    [InlineData("/ModDate (D:2026)", "/ModDate (D:2026)")]
    [InlineData("text", "text")]
    public void Dates_become_the_fixed_one(string pdf, string expected) => Encoding.ASCII.GetString(ChromiumPrinter.WithFixedDates(Encoding.ASCII.GetBytes(pdf))).Should().Be(expected);

    private RunnerEnvironment With(string? browser) => program.Here with { Variable = name => name == ChromiumPrinter.Variable ? browser : null };

    private string Script(string text)
    {
        var path = Path.Combine(program.Root, "browser.sh");
        File.WriteAllText(path, "#!/bin/sh\n" + text + "\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return path;
    }
}
