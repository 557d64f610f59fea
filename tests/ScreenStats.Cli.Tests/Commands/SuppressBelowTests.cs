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
        run.Output.Should().Contain("Small counts are hidden: those from 1 to 10").And.Contain("widened for clusters in coarse steps").And.NotContain("4 of 4 rows").And.Contain("Screening is not diagnosis");
    }

    [Fact]
    public void A_sentence_with_limits_in_coarse_steps_says_so_and_they_hold_the_exact_ones()
    {
        var run = Runner.Of("evaluate", RepositoryRoot.Combine("sample-data", "marrowlight"), "--suppress-below", "5", "--out", program.Report);

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("69 were confirmed: 39.4 % (95 % interval, in coarse steps, 17.1 % to 67.2 %)", "the exact limits are 18.8 % and 64.7 %");
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

    [Fact]
    public void The_report_that_is_replaced_is_an_earlier_release_unless_nobody_has_it()
    {
        var first = Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5");
        first.Errors.Should().Contain("note: no earlier report was taken into account").And.Contain("--earlier-release");
        File.ReadAllText(Path.Combine(program.Report, "report.html")).Should().Contain("No earlier report of this program was taken into account");

        var second = Runner.In(program.Here, "evaluate", "works", "--suppress-below", "6");
        second.Code.Should().Be(0, second.Errors);
        second.Errors.Should().Contain("which this one replaces, was taken into account");
        File.ReadAllText(Path.Combine(program.Report, "report.html")).Should().Contain("What an earlier release showed was taken into account").And.NotContain("No earlier report of this program");

        Runner.In(program.Here, "evaluate", "works", "--suppress-below", "6", "--earlier-release", "none").Errors.Should().Contain("no earlier report was taken into account");
        Runner.In(program.Here, "evaluate", "works").Errors.Should().NotContain("earlier report", "nothing is hidden, so nothing can leak");
        Runner.In(program.Here, "evaluate", "works", "--suppress-below", "6").Errors.Should().Contain("no earlier report was taken", "the report that is replaced was not for readers");
    }

    [Fact]
    public void With_few_positives_each_answer_says_what_is_hidden_and_why()
    {
        var run = Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5");

        run.Code.Should().Be(0, run.Errors);
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(program.Report, "findings.json")));
        foreach (var answer in json.RootElement.GetProperty("answers").GetProperty("questions").EnumerateArray()) answer.GetProperty("text").GetString().Should().NotBeNullOrWhiteSpace();
        run.Output.Should().Contain("is hidden, because a count").And.Contain("below 5");
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
