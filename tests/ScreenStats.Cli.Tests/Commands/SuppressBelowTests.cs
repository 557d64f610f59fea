using System.Text.Json;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class SuppressBelowTests : IDisposable
{
    private readonly ProgramOnDisk program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public void The_console_summary_says_that_small_counts_are_hidden_and_shows_none()
    {
        var run = Runner.In(program.Here, "evaluate", "works", "--suppress-below", "11");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("Small counts are hidden: those from 1 to 10").And.Contain("Limits are not widened for clusters here").And.NotContain("4 of 4 rows").And.Contain("Screening is not diagnosis");
    }

    [Fact]
    public void A_sentence_with_plain_limits_in_place_of_widened_ones_says_so()
    {
        var run = Runner.Of("evaluate", RepositoryRoot.Combine("sample-data", "marrowlight"), "--suppress-below", "5", "--out", program.Report);

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("69 were confirmed: 39.4 % (95 % interval, not widened for clusters, 32.5 % to 46.8 %)");
    }

    [Fact]
    public void A_hidden_figure_is_null_beside_a_word_that_says_so()
    {
        Runner.In(program.Here, "evaluate", "works", "--suppress-below", "11").Code.Should().Be(0);
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(program.Report, "findings.json")));

        var ledger = json.RootElement.GetProperty("ledger");
        ledger.GetProperty("counted").ValueKind.Should().Be(JsonValueKind.Null);
        ledger.GetProperty("countedHidden").GetBoolean().Should().BeTrue();
        json.RootElement.GetProperty("disclosure").GetProperty("suppressBelow").GetInt64().Should().Be(11);
        File.ReadAllLines(Path.Combine(program.Report, "set-aside.csv")).Should().ContainSingle();
    }

    [Fact]
    public void The_option_goes_before_the_program_file_and_is_named_in_the_manifest()
    {
        Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5").Code.Should().Be(0);

        File.ReadAllText(Path.Combine(program.Report, "manifest.json")).Should().Contain("\"suppress-below\": \"5\"");
    }

    [Fact]
    public void An_earlier_release_is_compared_with_and_another_folder_is_refused()
    {
        Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5", "--out", "first").Code.Should().Be(0);
        var second = Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5", "--earlier-release", "first");
        second.Code.Should().Be(0, second.Errors);
        File.ReadAllText(Path.Combine(program.Report, "report.html")).Should().Contain("an earlier release showed was taken into account");

        var refused = Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5", "--earlier-release", "works", "--out", "third");
        refused.Code.Should().Be(2);
        refused.Errors.Should().Contain("holds no report of ours to compare with");
    }

    [Theory]
    [InlineData("--earlier-release", "first")]
    [InlineData("--suppress-below", "5", "--set-aside-text")]
    [InlineData("--suppress-below", "-1")]
    [InlineData("--suppress-below", "2.5")]
    public void What_cannot_go_together_is_a_usage_error(params string[] options)
    {
        var run = Runner.In(program.Here, ["evaluate", "works", .. options]);

        run.Code.Should().Be(2);
        run.Errors.Should().NotContain("   at ");
    }
}
