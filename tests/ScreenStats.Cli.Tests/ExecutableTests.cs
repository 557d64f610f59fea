using System.Diagnostics;
using System.Text;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests;

/// <summary>The real executable, as a shell sees it: bytes and exit codes.</summary>
public sealed class ExecutableTests
{
    [Fact]
    public async Task A_result_is_UTF_8_without_a_mark_and_nothing_stands_on_the_error_stream()
    {
        var (code, output, errors) = await Start("interval", "81/263", "--json");

        code.Should().Be(0);
        errors.Should().BeEmpty();
        output.Should().NotStartWith("\uFEFF");
        Golden.Check("cli/interval-json.txt", output);
    }

    [Fact]
    public async Task A_usage_error_is_exit_code_2_and_leaves_standard_output_empty()
    {
        var (code, output, errors) = await Start("interval", "5/3");

        code.Should().Be(2);
        output.Should().BeEmpty();
        errors.Should().StartWith("screenstats: <counts>: 5/3");
    }

    [Fact]
    public async Task Data_that_cannot_answer_are_exit_code_1()
    {
        var (code, output, errors) = await Start("evaluate", Path.Combine(Path.GetTempPath(), "no-such-program-" + Guid.NewGuid()));

        code.Should().Be(1);
        output.Should().BeEmpty();
        errors.Should().StartWith("error: ");
    }

    private static async Task<(int Code, string Output, string Errors)> Start(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "ScreenStats.Cli.dll"), .. args])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = new UTF8Encoding(false),
            StandardErrorEncoding = new UTF8Encoding(false),
        };
        start.Environment["LANG"] = "de_DE.UTF-8";
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        using var bytes = new MemoryStream();
        await process.StandardOutput.BaseStream.CopyToAsync(bytes, TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, new UTF8Encoding(false).GetString(bytes.ToArray()), await errors);
    }
}
