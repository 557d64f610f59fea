using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace ScreenStats.Cli.Tests;

/// <summary>The real executable, stopped by real signals and by a disk that takes no more: nothing half-written is left.</summary>
public sealed class InterruptTests : IDisposable
{
    private const int Interrupt = 2;
    private const int Terminate = 15;

    private readonly string root = Directory.CreateTempSubdirectory("interrupt").FullName;

    public InterruptTests() => Directory.CreateDirectory(At("works"));

    public void Dispose() => Directory.Delete(root, true);

    [Theory]
    [InlineData(Interrupt)]
    [InlineData(Terminate)]
    public async Task A_signal_while_reading_is_noticed_within_a_second_and_leaves_nothing(int signal)
    {
        if (OperatingSystem.IsWindows()) return;
        Large("works/screening.csv", 1_500_000, 100_000);
        await Stopped(signal, TimeSpan.FromSeconds(0.8), "evaluate", "works", "--threads", "1", "--out", "report");
        Left().Should().BeEquivalentTo(["works"]);
        Left("works").Should().BeEquivalentTo(["screening.csv"]);
    }

    [Fact]
    public async Task A_signal_at_any_time_leaves_the_former_report_or_the_whole_new_one()
    {
        if (OperatingSystem.IsWindows()) return;
        Large("works/screening.csv", 20_000, 2_000);
        var (code, errors, took) = await Run(null, TimeSpan.Zero, "evaluate", "works", "--out", "report");
        code.Should().Be(0, errors);
        var former = Sums();
        Large("works/screening.csv", 21_000, 2_000);
        var stopped = 0;
        for (var step = 3; step <= 9; step += 2)
        {
            (code, errors, _) = await Run(Interrupt, took * step / 10, "evaluate", "works", "--out", "report");
            code.Should().BeOneOf(0, 130);
            Left().Should().BeEquivalentTo(["works", "report"], "nothing is left beside it");
            if (code == 0) break;
            stopped++;
            errors.Should().Be("screenstats: cancelled; nothing was written.\n");
            Sums().Should().Equal(former);
        }

        stopped.Should().BeGreaterThan(0);
    }

    [Fact]
    public async Task A_signal_while_pseudonymizing_leaves_neither_file_nor_key()
    {
        if (OperatingSystem.IsWindows()) return;
        Large("works/screening.csv", 2_000_000, 1_000_000);
        await Stopped(Interrupt, TimeSpan.FromSeconds(1), "pseudonymize", "works/screening.csv", "--columns", "person", "--key-file", "key", "--create-key", "--out", "out.csv");
        Left().Should().BeEquivalentTo(["works"]);
    }

    [Fact]
    public async Task A_signal_while_synthesizing_leaves_nothing()
    {
        if (OperatingSystem.IsWindows()) return;
        await Stopped(Interrupt, TimeSpan.FromSeconds(1), "synthesize", "made", "--seed", "1", "--runs", "20000000");
        Left("made").Should().BeEmpty();
    }

    [Fact]
    public async Task A_signal_after_the_answer_does_not_make_a_failure_of_it()
    {
        if (OperatingSystem.IsWindows()) return;
        for (var round = 0; round < 40; round++)
        {
            using var process = Process.Start(new ProcessStartInfo("dotnet", [Executable, "interval", "1/10"]) { RedirectStandardOutput = true })!;
            // Waits for a line with its signal, so that the signal comes within a millisecond of the answer's first.
            using var kill = Process.Start(new ProcessStartInfo("bash", ["-c", $"read; kill -{Interrupt} {process.Id} 2> /dev/null"]) { RedirectStandardInput = true })!;
            await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
            await kill.StandardInput.WriteLineAsync();
            await kill.StandardInput.FlushAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            process.ExitCode.Should().Be(0, "round {0}", round);
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        }
    }

    [Theory]
    [InlineData("pseudonymize", "works/screening.csv", "--columns", "person", "--key-file", "key", "--create-key", "--out", "out.csv")]
    [InlineData("evaluate", "works", "--out", "report")]
    [InlineData("synthesize", "made", "--seed", "1", "--runs", "100000")]
    public async Task A_file_that_may_not_grow_is_one_clear_message_and_leaves_nothing(params string[] args)
    {
        if (OperatingSystem.IsWindows()) return;
        Large("works/screening.csv", 50_000, 5_000);

        // 64 kB; the runtime's own memory files are larger unless it is told to do without.
        var (code, errors, _) = await Run(null, TimeSpan.Zero, "bash", ["-c", "ulimit -f 64; export DOTNET_EnableWriteXorExecute=0; exec dotnet \"$@\"", "x", Executable, .. args]);

        code.Should().Be(1, errors);
        errors.Should().Contain("larger than this machine lets a file be").And.NotContain("defect").And.NotContain("   at ");
        errors.TrimEnd('\n').Replace("\n  ", " ", StringComparison.Ordinal).Should().NotContain("\n");
        Left().Where(name => name != "made").Should().BeEquivalentTo(["works"]);
        if (Directory.Exists(At("made"))) Left("made").Should().BeEmpty();
    }

    private static string Executable => Path.Combine(AppContext.BaseDirectory, "ScreenStats.Cli.dll");

    private static async Task Kill(int process, int signal)
    {
        using var kill = Process.Start("bash", ["-c", $"kill -{signal} {process}"]);
        await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    // Before the program listens a signal ends it without a word, as any program, and on a busy machine that can be a while.
    // SIGXFSZ is the last one it listens to.
    private static async Task Listening(Process process)
    {
        const ulong fileTooLarge = 1UL << 24;
        while (OperatingSystem.IsLinux() && !process.HasExited)
        {
            var caught = (await File.ReadAllLinesAsync($"/proc/{process.Id}/status", TestContext.Current.CancellationToken)).First(line => line.StartsWith("SigCgt:", StringComparison.Ordinal));
            if ((ulong.Parse(caught.AsSpan("SigCgt:".Length).Trim(), NumberStyles.HexNumber, CultureInfo.InvariantCulture) & fileTooLarge) != 0) break;
            await Task.Delay(5, TestContext.Current.CancellationToken);
        }
    }

    private async Task Stopped(int signal, TimeSpan after, params string[] args)
    {
        var (code, errors, took) = await Run(signal, after, args);
        code.Should().Be(130, errors);
        errors.Should().Be("screenstats: cancelled; nothing was written.\n");
        // A second is the aim; the machine may be busy with other tests.
        took.Should().BeLessThan(TimeSpan.FromSeconds(3));
    }

    private Task<(int Code, string Errors, TimeSpan Took)> Run(int? signal, TimeSpan after, params string[] args) => Run(signal, after, "dotnet", [Executable, .. args]);

    // How long it took is since the signal, where there is one.
    private async Task<(int Code, string Errors, TimeSpan Took)> Run(int? signal, TimeSpan after, string program, string[] args)
    {
        var start = new ProcessStartInfo(program, args) { WorkingDirectory = root, RedirectStandardOutput = true, RedirectStandardError = true, StandardErrorEncoding = new UTF8Encoding(false) };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        if (signal is { } sent)
        {
            await Listening(process);
            if (after - watch.Elapsed is { } wait && wait > TimeSpan.Zero) await Task.Delay(wait, TestContext.Current.CancellationToken);
            watch.Restart();
            if (!process.HasExited) await Kill(process.Id, sent);
        }

        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        await output;
        return (process.ExitCode, await errors, watch.Elapsed);
    }

    private void Large(string name, int rows, int people)
    {
        using var writer = new StreamWriter(At(name)) { NewLine = "\n" };
        writer.Write("person,site,collected_at,result,lot\n");
        for (var i = 0; i < rows; i++) writer.Write($"P{i * 7919L % people:D7},Dock,2026-01-{1 + (i % 28):D2}T08:{i % 60:D2}:{i / 60 % 60:D2},{(i % 97 == 0 ? "positive" : "negative")},A{i % 5}\n");
    }

    private string At(string name) => Path.Combine(root, name);

    private string[] Left(string folder = ".") => [.. Directory.GetFileSystemEntries(At(folder)).Select(path => Path.GetFileName(path))];

    private SortedDictionary<string, string> Sums() => new(Directory.GetFiles(At("report"), "*", SearchOption.AllDirectories).ToDictionary(
        file => Path.GetRelativePath(root, file), file => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(file)))), StringComparer.Ordinal);
}
