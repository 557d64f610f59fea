using System.Text.Json;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class PseudonymizeTests : IDisposable
{
    private const string Key = "9f3c1a77e2b84d065bd1c8f02e94a7634418fdc60b7ae9253d70cb15f6821e9a";

    private readonly ProgramOnDisk program = new();

    public PseudonymizeTests()
    {
        Put("tests.csv", $"""
            Badge;name;site;collected_at;result;tester
            E-1;{ProgramOnDisk.Secret}, Ada;Dock;2026-01-05T08:00;negative;T-1
             e-2 ;{ProgramOnDisk.Secret}, Bob;Dock;2026-01-05T08:05;positive;T-1
            ;;Yard;2026-01-06T09:00;-;T-2

            """);
        Put("lab.csv", "patient,collected_at,result\nE-2,2026-01-05T12:00,positive\n");
        Put("key", Key + "\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(Path.Combine(program.Root, "key"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }

    public void Dispose() => program.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void What_was_done_is_said_without_any_value(string culture)
    {
        var root = program.Root;
        var run = Runner.Under(culture, "pseudonymize", Path.Combine(root, "tests.csv"), "--columns", "badge", "--operator-columns", "tester", "--drop", "name",
            "--generalise", "collected_at:day", "--key-file", Path.Combine(root, "key"), "--out", Path.Combine(root, "works", "out.csv"));

        run.Code.Should().Be(0, run.Errors);
        run.Errors.Should().BeEmpty();
        Golden.Check("cli/pseudonymize.txt", run.Output.Replace(root + Path.DirectorySeparatorChar, "", StringComparison.Ordinal).Replace('\\', '/'));
        Golden.Check("cli/pseudonymize-out.txt", File.ReadAllText(program.At("out.csv")));
    }

    [Fact]
    public void Json_is_one_object_without_any_value()
    {
        var run = In("tests.csv", "out.csv", "--columns", "badge", "--drop", "name", "--json");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().NotContain(ProgramOnDisk.Secret).And.NotContain("E-1").And.NotContain(Key);
        using var json = JsonDocument.Parse(run.Output);
        json.RootElement.GetProperty("rows").GetInt64().Should().Be(3);
        json.RootElement.GetProperty("columns")[0].GetProperty("blank").GetInt64().Should().Be(1);
        json.RootElement.GetProperty("columns")[1].GetProperty("treatment").GetString().Should().Be("dropped");
    }

    [Fact]
    public void Two_exports_still_link_and_evaluate_takes_them()
    {
        In("tests.csv", "works/screening.csv", "--columns", "badge", "--drop", "name").Code.Should().Be(2, "nothing is written over");
        File.Delete(program.At("screening.csv"));
        File.Delete(program.At("confirmatory.csv"));
        In("tests.csv", "works/screening.csv", "--columns", "badge", "--drop", "name").Code.Should().Be(0);
        In("lab.csv", "works/confirmatory.csv", "--columns", "patient").Code.Should().Be(0);

        var run = Runner.In(program.Here, "evaluate", "works");

        run.Code.Should().Be(0, run.Errors);
        File.ReadAllText(Path.Combine(program.Report, "tables", "follow-up.csv")).Should().Contain("program,,positive,1,1,");
    }

    [Theory]
    [InlineData("at least one column")]
    [InlineData("nearest is \"Badge\"", "--columns", "badg")]
    [InlineData("named twice", "--columns", "badge", "--drop", "BADGE")]
    [InlineData("such as birth:year", "--columns", "badge", "--generalise", "collected_at")]
    [InlineData("such as birth:year", "--columns", "badge", "--generalise", "collected_at:hour")]
    [InlineData("day-first", "--columns", "badge", "--date-order", "dmy")]
    [InlineData("separated by commas", "--columns", "badge,")]
    [InlineData("exists", "--columns", "badge", "--create-key")]
    public void A_line_that_cannot_be_followed_is_one_message_and_exit_code_2(string message, params string[] args)
    {
        var run = In("tests.csv", "out.csv", args);

        run.Code.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Errors.Should().Contain(message).And.NotContain("   at ").And.NotContain(Key);
        File.Exists(Path.Combine(program.Root, "out.csv")).Should().BeFalse();
    }

    [Theory]
    [InlineData("works/../../out.csv", "goes back")]
    [InlineData("a/../out.csv", "goes back")]
    [InlineData(" ", "needs a name")]
    [InlineData("out\n.csv", "control character")]
    [InlineData("nowhere/out.csv", "does not exist")]
    [InlineData("tests.csv", "exists")]
    [InlineData("key", "exists")]
    [InlineData("works", "exists")]
    public void A_place_that_cannot_be_written_to_is_refused(string place, string message)
    {
        var run = In("tests.csv", place, "--columns", "badge");

        run.Code.Should().Be(2);
        run.Errors.Should().Contain(message);
        File.ReadAllText(Path.Combine(program.Root, "key")).Should().Be(Key + "\n");
        Directory.GetFileSystemEntries(program.Root).Should().HaveCount(4);
    }

    [Theory]
    [InlineData("works/../../report")]
    [InlineData("")]
    public void The_report_is_not_put_where_the_name_hides_it(string place)
    {
        Runner.In(program.Here, "evaluate", "works", "--out", place).Code.Should().Be(2);
        Directory.GetFileSystemEntries(program.Root).Should().HaveCount(4);
    }

    [Fact]
    public void A_damaged_workbook_and_a_packed_file_that_was_cut_off_are_refused_in_words()
    {
        File.WriteAllBytes(Path.Combine(program.Root, "tests.xlsx"), [.. "PK\u0003\u0004"u8, 0, 1, 2, 3, 0, 0]);
        File.WriteAllBytes(Path.Combine(program.Root, "tests.csv.gz"), [0x1F, 0x8B, 8, 0, 0, 0, 0, 0, 0, 0]);
        foreach (var name in (string[])["tests.xlsx", "tests.csv.gz"])
        {
            var run = In(name, "out.csv", "--columns", "badge");
            run.Code.Should().Be(1);
            run.Errors.Should().StartWith("error: ").And.Contain(name).And.ContainAny("save it anew", "Copy it again");
            File.Exists(Path.Combine(program.Root, "out.csv")).Should().BeFalse();
        }
    }

    [Fact]
    public void What_was_made_of_a_workbook_and_of_resources_is_said_on_the_error_stream()
    {
        Copy("workbook-with-cover-sheet", "screening.xlsx", "tests.xlsx");
        Copy("observations-by-many-references", "confirmatory.ndjson.gz", "lab.ndjson.gz");

        var run = In("tests.xlsx", "out.csv", "--columns", "person");
        run.Code.Should().Be(0, run.Errors);
        run.Errors.Should().StartWith("note: tests.xlsx was read as workbook, sheet \"Log\", headings on line 1; the result is CSV in UTF-8.\n");
        run.Output.Should().Contain("3 rows written").And.Contain("read as workbook; written as CSV in UTF-8");
        File.ReadAllText(Path.Combine(program.Root, "out.csv")).Should().StartWith("person,site,collected_at,result\np1-");

        run = In("lab.ndjson.gz", "result.csv", "--columns", "person");
        run.Code.Should().Be(0, run.Errors);
        run.Errors.Should().Be("note: lab.ndjson.gz was read as FHIR R4 Observation resources in gzip, of which only person, collected_at, result, reported_at, method are written; the result is CSV in UTF-8.\n");
        File.ReadAllLines(Path.Combine(program.Root, "result.csv")).Should().HaveCount(5);

        run = In("lab.ndjson.gz", "other.csv", "--columns", "patient");
        run.Code.Should().NotBe(0);
        run.Errors.Should().Contain("--columns person");
    }

    private void Copy(string corpus, string file, string name) =>
        File.Copy(RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus", corpus, file), Path.Combine(program.Root, name));

    private Runner In(string source, string target, params string[] args) =>
        Runner.In(program.Here, ["pseudonymize", source, "--key-file", "key", "--out", target, .. args]);

    private void Put(string name, string text) => File.WriteAllText(Path.Combine(program.Root, name), text);
}
