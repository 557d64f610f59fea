using System.Text.Json;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class SinceTests : IDisposable
{
    private const string Later = """
        p5,Dock,2026-01-12T08:00,negative,A1
        p6,Dock,2026-01-12T08:05,negative,A1
        p7,Yard,2026-01-13T09:05,positive,A2

        """;

    private readonly ProgramOnDisk program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public void What_has_changed_stands_in_the_summary_the_page_the_tables_and_the_data()
    {
        First();
        var run = Runner.In(program.Here, "evaluate", "works", "--since", "first/findings.json");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("What has changed since 2026-01-06?").And.Contain("Positive of valid tests: 33.3 % before");
        File.ReadAllText(Path.Combine(program.Report, "report.html")).Should().Contain("id=\"changes\"");
        File.ReadAllText(Path.Combine(program.Report, "tables", "changes.csv")).Should().Contain("program,,positivity,1,3,");
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(program.Report, "findings.json")));
        json.RootElement.GetProperty("changes").GetProperty("relation").GetString().Should().Be("grown");
        File.ReadAllText(Path.Combine(program.Report, "manifest.json")).Should().Contain("\"since\": \"true\"");
    }

    [Fact]
    public void The_folder_of_a_report_does_as_well_as_the_file_in_it_and_the_report_itself_may_be_replaced()
    {
        Runner.In(program.Here, "evaluate", "works").Code.Should().Be(0);
        program.Write("screening.csv", ProgramOnDisk.Screening + Later);
        var run = Runner.In(program.Here, "evaluate", "works", "--since", "report");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().Contain("What has changed since");
    }

    [Fact]
    public void Without_the_option_nothing_speaks_of_changes()
    {
        First();
        var run = Runner.In(program.Here, "evaluate", "works");

        run.Output.Should().NotContain("What has changed");
        Directory.GetFiles(Path.Combine(program.Report, "tables"), "change*").Should().BeEmpty();
    }

    [Theory]
    [InlineData("nowhere.json", "There is no file")]
    [InlineData("works", "holds no findings.json")]
    [InlineData("works/screening.csv", "is not valid JSON")]
    [InlineData("works/program.json", "no findings.json of ours")]
    [InlineData("first/manifest.json", "no findings.json of ours")]
    public void What_is_no_earlier_evaluation_is_refused_before_anything_is_written(string named, string message)
    {
        First();
        var run = Runner.In(program.Here, "evaluate", "works", "--since", named);

        run.Code.Should().Be(2);
        OneLine(run.Errors).Should().StartWith("screenstats: ").And.Contain(message).And.NotContain(" at ScreenStats").And.NotContain(ProgramOnDisk.Secret);
        Directory.Exists(program.Report).Should().BeFalse();
    }

    [Fact]
    public void An_evaluation_of_the_same_data_is_refused()
    {
        Runner.In(program.Here, "evaluate", "works", "--out", "first").Code.Should().Be(0);
        Refused("first", "same data");
    }

    [Fact]
    public void An_evaluation_of_another_program_is_refused()
    {
        First();
        program.Write("screening.csv", (ProgramOnDisk.Screening + Later).Replace("Dock", "Mill", StringComparison.Ordinal).Replace("Yard", "Moor", StringComparison.Ordinal));
        Refused("first", "no site of this program");
    }

    [Fact]
    public void An_evaluation_that_ends_later_is_refused()
    {
        program.Write("screening.csv", ProgramOnDisk.Screening + Later);
        Runner.In(program.Here, "evaluate", "works", "--out", "first").Code.Should().Be(0);
        program.Write("screening.csv", ProgramOnDisk.Screening);
        Refused("first", "goes up to 2026-01-13 and these data only to 2026-01-06");
    }

    [Fact]
    public void A_newer_format_is_refused()
    {
        First();
        var path = Path.Combine(program.Root, "first", "findings.json");
        File.WriteAllText(path, File.ReadAllText(path).Replace("\"format\": 1,", "\"format\": 7,", StringComparison.Ordinal));
        Refused("first", "has format 7");
    }

    // The four ways in which two reports can hide small counts or not.
    [Fact]
    public void A_report_that_hides_nothing_can_be_compared_with_one_that_hides()
    {
        First("--suppress-below", "5");
        var run = Runner.In(program.Here, "evaluate", "works", "--since", "first");

        run.Code.Should().Be(0, run.Errors);
        File.ReadAllText(Path.Combine(program.Report, "tables", "changes.csv")).Should().Contain("program,,positivity,,,,2,6,");
    }

    [Fact]
    public void A_report_that_hides_is_not_compared_with_one_that_shows_everything()
    {
        First();
        Refused("first", "shows small counts and this report hides them", "--suppress-below", "5");
    }

    [Fact]
    public void A_report_that_hides_is_not_compared_with_one_that_hides_less()
    {
        First("--suppress-below", "3");
        Refused("first", "hides counts below 3", "--suppress-below", "5");
    }

    [Fact]
    public void Of_two_reports_that_hide_the_one_compared_with_is_the_earlier_release()
    {
        First("--suppress-below", "5");
        var run = Runner.In(program.Here, "evaluate", "works", "--since", "first/findings.json", "--suppress-below", "5");

        run.Code.Should().Be(0, run.Errors);
        run.Errors.Should().Contain("the earlier report was taken into account");
        var page = File.ReadAllText(Path.Combine(program.Report, "report.html"));
        page.Should().Contain("What an earlier release showed was taken into account");
        File.ReadAllText(Path.Combine(program.Report, "tables", "changes.csv")).Should().NotContain("positivity,1,").And.Contain("hidden");
    }

    [Fact]
    public void With_small_counts_hidden_only_one_earlier_report_can_be_taken_into_account()
    {
        First("--suppress-below", "5");
        Refused("first", "leave --earlier-release out", "--suppress-below", "5", "--earlier-release", "none");
        Runner.In(program.Here, "evaluate", "works", "--suppress-below", "5").Code.Should().Be(0);
        Refused("first", "write to another folder", "--suppress-below", "5");
        File.Copy(Path.Combine(program.Root, "first", "findings.json"), Path.Combine(program.Root, "alone.json"));
        Refused("alone.json", "holds no report of ours to compare with", "--suppress-below", "5", "--out", "other");
        File.Copy(Path.Combine(program.Root, "first", "findings.json"), Path.Combine(program.Root, "first", "kept.json"));
        Refused("first/kept.json", "the findings.json in it", "--suppress-below", "5", "--out", "other");
    }

    private static string OneLine(string text) => text.Replace("\n", " ", StringComparison.Ordinal);

    private void First(params string[] options)
    {
        Runner.In(program.Here, ["evaluate", "works", "--out", "first", .. options]).Code.Should().Be(0);
        program.Write("screening.csv", ProgramOnDisk.Screening + Later);
    }

    private void Refused(string named, string message, params string[] options)
    {
        var run = Runner.In(program.Here, ["evaluate", "works", "--since", named, .. options]);

        run.Code.Should().Be(2, run.Errors + run.Output);
        OneLine(run.Errors).Should().Contain(message).And.NotContain(" at ScreenStats");
    }
}
