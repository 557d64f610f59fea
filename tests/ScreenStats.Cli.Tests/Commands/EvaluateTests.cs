using System.Security.Cryptography;
using System.Text.Json;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class EvaluateTests : IDisposable
{
    private readonly ProgramOnDisk program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public void The_summary_answers_and_says_where_the_report_is()
    {
        var run = Runner.In(program.Here, "evaluate", "works");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("Small works").And.Contain("4 of 4 rows counted").And.Contain(Path.Combine("report", "report.html"))
            .And.Contain("Screening is not diagnosis");
    }

    [Fact]
    public void Each_answer_begins_with_its_figure_and_the_bounds_stand_beside_the_predictive_value()
    {
        program.Write("confirmatory.csv", "person,collected_at,result\np9,2026-01-05T12:00,negative\n");

        var run = Runner.In(program.Here, "evaluate", "works");

        var lines = run.Output.Split('\n').ToList();
        lines[lines.IndexOf("What is a positive here worth?") + 1].Should().NotBeEmpty();
        lines.Should().Contain("What to do next");
        lines.IndexOf("What to do next").Should().BeLessThan(24, "it stands on the first screen");
    }

    [Fact]
    public void The_same_note_on_several_files_is_said_once()
    {
        using var errors = new StringWriter();
        Counting.Diagnostics.Diagnostic Note(string file) => new("lines-before-headings", Counting.Diagnostics.Severity.Note, file, 3, "", $"The headings of {file} were found on line 3.");

        ScreenStats.Cli.Terminal.DiagnosticLines.Write(errors, [Note("a.csv"), Note("b.csv"), Note("c.csv")], 1000);

        errors.ToString().Should().Be("note: The headings of a.csv were found on line 3. [lines-before-headings] (likewise: b.csv, c.csv)\n");
    }

    [Fact]
    public void Json_is_the_findings_of_the_report_itself()
    {
        var run = Runner.In(program.Here, "evaluate", "works", "--json");

        run.Output.Should().Be(File.ReadAllText(Path.Combine(program.Report, "findings.json")));
        using var json = JsonDocument.Parse(run.Output);
        json.RootElement.GetProperty("ledger").GetProperty("counted").GetInt64().Should().Be(4);
    }

    [Fact]
    public void A_report_of_ours_is_replaced_and_has_the_same_bytes_whatever_the_threads_and_culture()
    {
        Runner.In(program.Here, "evaluate", "works", "--threads", "1").Code.Should().Be(0);
        var first = Bytes();
        Runner.In(program.Here, "evaluate", "works", "--threads", "3").Code.Should().Be(0);
        Bytes().Should().Equal(first);
        foreach (var culture in (string[])["de-DE", "tr-TR"])
        {
            Runner.Under(culture, "evaluate", Path.Combine(program.Root, "works"), "--out", program.Report).Code.Should().Be(0);
            Bytes().Should().Equal(first, culture);
        }

        Directory.GetFileSystemEntries(program.Root).Should().HaveCount(2, "nothing is left beside the report");
    }

    [Fact]
    public void As_of_decides_between_pending_and_unverified()
    {
        program.Write("confirmatory.csv", "person,collected_at,result\np9,2026-01-05T12:00,negative\n");

        Runner.In(program.Here, "evaluate", "works", "--as-of", "2026-01-06").Code.Should().Be(0);
        FollowUp("pending").Should().Be("1");
        Runner.In(program.Here, "evaluate", "works", "--as-of", "2026-03-31").Code.Should().Be(0);
        FollowUp("pending").Should().Be("0");
        FollowUp("unverified").Should().Be("1");
    }

    [Theory]
    [InlineData("site")]
    [InlineData("operator")]
    [InlineData("kit")]
    [InlineData("specimen")]
    [InlineData("region")]
    public void By_is_taken_and_stands_in_the_manifest(string by)
    {
        program.Write("program.json", """{ "report": { "compareBy": "specimen" } }""");

        var run = Runner.In(program.Here, "evaluate", "works", "--by", by);

        run.Code.Should().Be(0, run.Errors);
        using var manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(program.Report, "manifest.json")));
        manifest.RootElement.GetProperty("options").GetProperty("by").GetString().Should().Be(by);
    }

    [Fact]
    public void By_with_another_word_lists_the_words_there_are()
    {
        var run = Runner.In(program.Here, "evaluate", "works", "--by", "shift");

        run.Code.Should().Be(2);
        run.Errors.Should().Contain("--by: \"shift\" is not known; write one of site, operator, kit, specimen, region.");
    }

    [Fact]
    public void The_text_of_rows_set_aside_is_written_only_on_request()
    {
        program.Write("screening.csv", ProgramOnDisk.Screening + $"p5,Dock,2026-01-07T08:00,{ProgramOnDisk.Secret},A1\n");

        var silent = Runner.In(program.Here, "evaluate", "works");
        var everything = string.Concat(Directory.GetFiles(program.Report, "*", SearchOption.AllDirectories)
            .Where(file => !file.EndsWith(".png", StringComparison.Ordinal) && !file.EndsWith(".xlsx", StringComparison.Ordinal)).Select(File.ReadAllText));
        (silent.Output + silent.Errors + everything).Should().NotContain(ProgramOnDisk.Secret);

        Runner.In(program.Here, "evaluate", "works", "--set-aside-text").Code.Should().Be(0);
        File.ReadAllText(Path.Combine(program.Report, "set-aside.csv")).Should().Contain(ProgramOnDisk.Secret);
    }

    [Fact]
    public void Cancelling_writes_nothing_and_answers_130()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();

        var run = Runner.In(program.Here with { Cancelled = cancelled.Token }, "evaluate", "works");

        run.Code.Should().Be(130);
        run.Errors.Should().Contain("cancelled");
        Directory.Exists(program.Report).Should().BeFalse();
    }

    [Fact]
    public void Inspect_shows_how_the_exports_were_understood()
    {
        program.Write("screening.csv", ProgramOnDisk.Screening + $"p5,Dock,2026-01-07T08:00,{ProgramOnDisk.Secret},A1\n");
        foreach (var culture in (string[])["", "de-DE", "tr-TR"])
        {
            var run = Runner.Under(culture, "inspect", Path.Combine(program.Root, "works"));

            run.Code.Should().Be(0, run.Errors);
            run.Output.Should().NotContain(ProgramOnDisk.Secret);
            Golden.Check("cli/inspect.txt", run.Output);
        }

        Directory.GetFileSystemEntries(program.Root).Should().HaveCount(1);
    }

    [Fact]
    public void Inspect_of_refused_exports_shows_how_far_they_were_understood()
    {
        program.Write("screening.csv", "Badge,Site,Date,Result,Lot\n1,Dock,03.01.2026,neg,A1\n2,Dock,04.01.2026,pos,A1\n");
        var run = Runner.In(program.Here, "inspect", "works");

        run.Code.Should().Be(1);
        Golden.Check("cli/inspect-refused.txt", run.Output);
        Golden.Check("cli/inspect-refused-messages.txt", run.Errors);
        using var json = JsonDocument.Parse(Runner.In(program.Here, "inspect", "works", "--json").Output);
        json.RootElement.GetProperty("refused").GetBoolean().Should().BeTrue();
        json.RootElement.GetProperty("programFile").GetProperty("exports").GetProperty("screening").GetProperty("columns").GetProperty("person").GetString().Should().Be("Badge");
    }

    [Fact]
    public void Inspect_gives_the_same_as_one_object()
    {
        program.Write("screening.csv", ProgramOnDisk.Screening + $"p5,Dock,2026-01-07T08:00,{ProgramOnDisk.Secret},A1\n");
        var run = Runner.In(program.Here, "inspect", "works", "--json");

        run.Output.Should().NotContain(ProgramOnDisk.Secret);
        Golden.Check("cli/inspect-json.txt", run.Output);
        using var json = JsonDocument.Parse(run.Output);
        json.RootElement.GetProperty("ledger").EnumerateArray()
            .Where(item => item.GetProperty("export").GetString() == "screening").Sum(item => item.GetProperty("rows").GetInt64()).Should().Be(5);
    }

    private string FollowUp(string column)
    {
        var lines = File.ReadAllLines(Path.Combine(program.Report, "tables", "follow-up.csv"));
        var headings = lines[0].Split(',');
        var row = lines.Select(line => line.Split(',')).Single(cells => cells[0] == "program" && cells[2] == "positive");
        return row[Array.IndexOf(headings, column)];
    }

    private SortedDictionary<string, string> Bytes() => new(Directory.GetFiles(program.Report, "*", SearchOption.AllDirectories).ToDictionary(
        file => Path.GetRelativePath(program.Report, file), file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)))), StringComparer.Ordinal);
}
