using System.Globalization;
using System.Text;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests.Commands;

/// <summary>Each kind of bad input of the main job: one clear message, exit code 1 or 2, no stack trace, nothing written.</summary>
public sealed class BadInputTests : IDisposable
{
    private readonly ProgramOnDisk program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public void Good_input_is_evaluated_so_that_what_follows_can_fail()
    {
        var run = Runner.In(program.Here, "evaluate", "works");

        run.Code.Should().Be(0, run.Errors);
        File.Exists(Path.Combine(program.Report, "report.html")).Should().BeTrue();
    }

    [Fact]
    public void A_folder_that_is_not_there() => Refused("nowhere", "check the path", "nowhere");

    [Fact]
    public void A_folder_that_is_not_there_is_named_also_where_a_word_of_the_message_holds_its_name() =>
        Runner.Of("evaluate", "de").Errors.Should().StartWith("error: de: There is no folder");

    [Fact]
    public void Findings_of_inspect_fit_a_narrow_screen()
    {
        var run = Runner.In(new RunnerEnvironment { Width = 80 }, "inspect", ScreenStats.Testing.RepositoryRoot.Combine("sample-data", "marrowlight"));

        var findings = run.Output.Split("Findings in the data\n")[1].Split("\n\n")[0].Split('\n');
        findings.Should().HaveCountGreaterThan(2).And.OnlyContain(line => line.Length <= 80);
        findings.Should().Contain(line => line.StartsWith("warning ", StringComparison.Ordinal) || line.StartsWith("note ", StringComparison.Ordinal));
    }

    [Fact]
    public void An_export_given_in_place_of_the_program() => Refused("works/screening.csv", "not a program file", "screening.csv");

    [Fact]
    public void A_folder_without_a_screening_export()
    {
        File.Delete(program.At("screening.csv"));
        Refused("works", "screening", "Rename the file", "\"files\": [\"its name\"]", "xlsx or parquet");
    }

    [Fact]
    public void A_file_named_in_the_program_file_that_is_not_there()
    {
        program.Write("program.json", """{ "exports": { "screening": { "files": ["january.csv"] } } }""");
        Refused("works", "january.csv");
    }

    [Fact]
    public void An_empty_file()
    {
        program.Write("screening.csv", "");
        Refused("works", "screening.csv", "empty");
    }

    [Fact]
    public void Random_bytes()
    {
        var bytes = new byte[100_000];
        new Random(20260105).NextBytes(bytes);
        program.Write("screening.csv", bytes);
        Refused("works", "screening.csv");
    }

    [Fact]
    public void A_header_only()
    {
        program.Write("screening.csv", "person,site,collected_at,result\n");
        Refused("works", "screening.csv");
    }

    [Fact]
    public void A_missing_required_column()
    {
        program.Write("screening.csv", ProgramOnDisk.Screening.Replace("collected_at", "colour", StringComparison.Ordinal));
        Refused("works", "screening.csv", "collected_at");
    }

    [Fact]
    public void An_unknown_key_in_the_program_file()
    {
        program.Write("program.json", "{\n  \"policy\": { \"confirmWithin\": 72 }\n}");
        Refused("works", "program.json, line 2", "policy.confirmWithin", "confirmWithinHours");
    }

    [Fact]
    public void Every_problem_of_the_program_file_is_reported()
    {
        program.Write("program.json", "{\n  \"polcy\": {},\n  \"timeZone\": \"Europe/Nowhere\"\n}");
        Refused("works", "line 2", "\"policy\"", "line 3", "timeZone");
    }

    [Fact]
    public void A_program_file_that_is_not_JSON()
    {
        program.Write("program.json", "{ \"title\": ");
        Refused("works", "program.json", "not valid JSON");
    }

    [Fact]
    public void A_program_file_that_is_not_UTF_8()
    {
        program.Write("program.json", [(byte)'{', 0xff, (byte)'}']);
        Refused("works", "program.json", "UTF-8");
    }

    [Fact]
    public void An_ambiguous_date_column()
    {
        program.Write("screening.csv", "person,site,collected_at,result\np1,Dock,01/02/2026,negative\np2,Dock,03/04/2026,positive\n");
        Refused("works", "collected_at", "dateOrder");
    }

    [Fact]
    public void A_line_of_100_megabytes()
    {
        using (var file = File.Create(program.At("screening.csv")))
        {
            file.Write(Encoding.UTF8.GetBytes("person,site,collected_at,result\np1,"));
            var piece = new byte[1 << 20];
            Array.Fill(piece, (byte)'x');
            for (var written = 0; written < 100; written++) file.Write(piece);
            file.Write(Encoding.UTF8.GetBytes(",2026-01-05T08:00,negative\n"));
        }

        Refused("works", "screening.csv", "line 2");
    }

    [Fact]
    public void An_unclosed_quote()
    {
        var text = new StringBuilder("person,site,collected_at,result\np1,\"Dock,2026-01-05T08:00,negative\n");
        for (var row = 0; row < 50; row++) text.Append("p2,Dock,2026-01-05T08:05,positive\n");
        program.Write("screening.csv", text.ToString());
        Refused("works", "screening.csv", "line 2", "quote");
    }

    [Fact]
    public void Times_with_and_without_an_offset_and_no_time_zone()
    {
        program.Write("program.json", "{}");
        program.Write("screening.csv", "person,site,collected_at,result\np1,Dock,2026-01-05T08:00,negative\np2,Dock,2026-01-05T08:05+01:00,positive\n");
        Refused("works", "offset", "timeZone");
    }

    [Fact]
    public void A_person_column_that_holds_names_or_addresses()
    {
        var text = new StringBuilder("person,site,collected_at,result\n");
        for (var row = 0; row < 50; row++) text.Append(CultureInfo.InvariantCulture, $"{ProgramOnDisk.Secret}.{row}@example.com,Dock,2026-01-05T08:05,negative\n");
        program.Write("screening.csv", text.ToString());
        Refused("works", "person", "pseudonym");
    }

    [Fact]
    public void An_output_folder_that_is_not_ours()
    {
        Directory.CreateDirectory(program.Report);
        File.WriteAllText(Path.Combine(program.Report, "thesis.txt"), "mine");

        var run = Runner.In(program.Here, "evaluate", "works");

        run.Code.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Errors.Should().Contain("nothing was written").And.NotContain("   at ");
        run.Errors.TrimEnd('\n').Should().NotContain("\n");
        Directory.GetFileSystemEntries(program.Report).Should().ContainSingle();
        File.ReadAllText(Path.Combine(program.Report, "thesis.txt")).Should().Be("mine");
    }

    [Fact]
    public void An_output_that_is_the_folder_of_the_exports()
    {
        Runner.In(program.Here, "evaluate", "works", "--out", "works").Code.Should().Be(2);
        File.ReadAllText(program.At("screening.csv")).Should().Be(ProgramOnDisk.Screening);
    }

    [Fact]
    public void An_output_that_is_a_file()
    {
        File.WriteAllText(program.Report, "mine");
        Runner.In(program.Here, "evaluate", "works").Code.Should().Be(2);
        File.ReadAllText(program.Report).Should().Be("mine");
    }

    [Theory]
    [InlineData("--as-of", "31.03.2026")]
    [InlineData("--threads", "0")]
    [InlineData("--threads", "two")]
    [InlineData("--memory", "1")]
    [InlineData("--memory", "1,5GB")]
    [InlineData("--memory", "64MB")]
    [InlineData("--outt", "x")]
    public void An_option_that_cannot_be_followed(string option, string value)
    {
        var run = Runner.In(program.Here, "evaluate", "works", option, value);

        run.Code.Should().Be(2);
        Directory.Exists(program.Report).Should().BeFalse();
    }

    private void Refused(string path, params string[] words)
    {
        foreach (var command in (string[])["evaluate", "inspect"])
        {
            var run = Runner.In(program.Here, command, path);

            run.Code.Should().Be(1, run.Errors);
            // inspect shows how far things were understood; the messages are the same.
            if (command == "evaluate") run.Output.Should().BeEmpty();
            run.Output.Should().NotContain(ProgramOnDisk.Secret).And.NotContain("Ledger");
            run.Errors.Should().StartWith("error: ").And.NotContain("   at ").And.NotContain(ProgramOnDisk.Secret).And.NotContain("Exception");
            foreach (var word in words) run.Errors.Should().Contain(word);
            Directory.GetFileSystemEntries(program.Root).Should().HaveCount(1, "nothing may be written");
        }
    }
}
