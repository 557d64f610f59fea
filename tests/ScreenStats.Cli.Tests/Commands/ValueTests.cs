using System.Text.Json;
using System.Text.Json.Nodes;
using ScreenStats.Cli.Terminal;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class ValueTests : IDisposable
{
    private static readonly string Sample = RepositoryRoot.Combine("sample-data", "marrowlight");
    private readonly string folder = Directory.CreateTempSubdirectory("value").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void The_answer_for_an_employer_fits_a_narrow_screen_and_is_the_same_in_every_culture()
    {
        var run = Of(Sample);

        run.Code.Should().Be(0, run.Errors);
        Golden.Check("cli/value.txt", run.Output);
        FitsNarrow(run.Output);
        run.Output.Should().Contain("Every price, and what an effect is worth, is the program file's").And.Contain("Screening is not diagnosis");
        foreach (var culture in new[] { "de-DE", "tr-TR" }) Runner.Under(culture, "value", Sample).Output.Should().Be(Runner.Of("value", Sample).Output);
    }

    [Fact]
    public void The_json_is_what_findings_json_holds_under_worth()
    {
        var report = Path.Combine(folder, "report");
        Runner.Of("evaluate", Sample, "--out", report).Code.Should().Be(0);
        var run = Runner.Of("value", Sample, "--json");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().EndWith("}\n").And.Subject.Count(letter => letter == '\n').Should().Be(1);
        var findings = JsonNode.Parse(File.ReadAllText(Path.Combine(report, "findings.json")))!["worth"];
        JsonNode.DeepEquals(JsonNode.Parse(run.Output), findings).Should().BeTrue();
        Runner.Under("de-DE", "value", Sample, "--json").Output.Should().Be(run.Output);
    }

    [Fact]
    public void Without_any_cost_it_says_what_is_done_and_which_figures_are_missing_and_names_no_price()
    {
        Copy(program => program.Remove("costs"));
        var run = Of(folder);

        run.Code.Should().Be(0, run.Errors);
        Golden.Check("cli/value-no-costs.txt", run.Output);
        FitsNarrow(run.Output);
        run.Output.Should().NotContain("EUR").And.Contain("What is missing");
        using var json = JsonDocument.Parse(Runner.Of("value", folder, "--json").Output);
        json.RootElement.GetProperty("costs").EnumerateArray().Should().OnlyContain(item => item.GetProperty("cost").GetProperty("estimate").ValueKind == JsonValueKind.Null);
        json.RootElement.GetProperty("options").EnumerateArray().Should().OnlyContain(item => item.GetProperty("isNone").GetBoolean() || item.GetProperty("netBenefit").GetProperty("estimate").ValueKind == JsonValueKind.Null);
    }

    [Fact]
    public void Without_a_course_of_infection_it_goes_as_far_as_the_counts_do()
    {
        Copy(program => program["cadence"]!.AsObject().Remove("course"));
        var run = Of(folder);

        run.Code.Should().Be(0, run.Errors);
        Golden.Check("cli/value-no-course.txt", run.Output);
        FitsNarrow(run.Output);
        run.Output.Should().Contain("cost per screen").And.Contain("What is missing");
    }

    [Fact]
    public void A_small_program_in_full_precision()
    {
        using var program = Small("""{ "currency": "EUR", "priceYear": 2024, "screen": { "value": 6, "lower": 5, "upper": 8 }, "confirmatoryTest": 50 }""");
        var run = Runner.In(program.Here, "value", "works", "--json");

        run.Code.Should().Be(0, run.Errors);
        Golden.Check("cli/value.json", run.Output);
    }

    [Fact]
    public void Nothing_counted_is_said_and_not_computed()
    {
        using var program = Small("""{ "screen": 6 }""");
        program.Write("screening.csv", "person,site,collected_at,result,lot,control\np1,Dock,2026-01-05T08:00,negative,A1,negative\n");
        var run = Runner.In(program.Here, "value", "works");

        run.Code.Should().Be(0, run.Errors);
        run.Output.Should().NotContain("NaN").And.NotContain("∞").And.Contain("Screening is not diagnosis");
    }

    [Fact]
    public void What_is_not_known_in_full_is_bounded_from_below_and_the_reason_stands_under_it()
    {
        using var program = Small("""{ "screen": { "value": 6, "lower": 5, "upper": 8 }, "confirmatoryTest": 50 }""");
        var both = Runner.In(program.Here, "value", "works").Output;
        both.Should().MatchRegex("cost in total +undefined +70\\.0 or more").And.Contain("Undefined: cost in total: ");
        both.Should().MatchRegex("screens +6\\.00 +4 +24\\.0 +20\\.0 to 32\\.0", "the number of screens is a whole one");

        File.Delete(program.At("confirmatory.csv"));
        Runner.In(program.Here, "value", "works").Output.Should().MatchRegex("cost per screen +undefined +5\\.00 or more").And.Contain("there is no confirmatory export");
    }

    [Fact]
    public void A_discount_rate_is_said_with_the_year_from_which_it_counts()
    {
        using var program = Small("""{ "screen": 6, "discountRate": 0.03, "perspective": "employer" }""");
        Runner.In(program.Here, "value", "works").Output.ReplaceLineEndings(" ").Should().Contain("perspective: employer.").And.Contain("Costs and effects after the first year are discounted at 3.00 % a year");
    }

    [Theory]
    [InlineData("""{ "screen": 6, "kit": 3 }""", 1, "costs.kit must be left out")]
    [InlineData("""{ "screen": "6 EUR" }""", 1, "costs.screen must be an amount of money")]
    [InlineData("""{ "scren": 6 }""", 1, "the nearest known one is \"screen\"")]
    public void A_price_that_cannot_be_read_stops_with_one_message(string costs, int code, string part)
    {
        using var program = Small(costs);
        var run = Runner.In(program.Here, "value", "works");

        run.Code.Should().Be(code);
        run.Output.Should().BeEmpty();
        run.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Should().ContainSingle().Which.Should().Contain(part).And.Contain("program.json");
    }

    [Fact]
    public void Usage_is_explained()
    {
        Runner.Of("value").Code.Should().Be(2);
        Runner.Of("value", Sample, "--as-of", "31.3.2026").Code.Should().Be(2);
        var unknown = Runner.Of("value", Sample, "--prices", "x");
        unknown.Code.Should().Be(2);
        unknown.Errors.Should().Contain("screenstats value --help");
        Runner.Of("value", Path.Combine(folder, "nowhere")).Code.Should().Be(1);
    }

    [Fact]
    public void Where_reports_hide_small_counts_the_reader_is_told_that_this_answer_does_not()
    {
        using var program = Small("""{ "screen": 6 }""", """, "report": { "suppressBelow": 5 }""");
        var run = Runner.In(program.Here, "value", "works");

        run.Code.Should().Be(0, run.Errors);
        run.Errors.Should().Contain("this answer hides none");
    }

    private static Runner Of(string program) => Runner.In(new RunnerEnvironment { Width = 80 }, "value", program);

    // The cautions of every command are set in lines of their own.
    private static void FitsNarrow(string output) =>
        output.Split("\nScreening is not diagnosis")[0].Split('\n').Should().OnlyContain(line => line.Length <= 80);

    private static ProgramOnDisk Small(string costs, string more = "")
    {
        var program = new ProgramOnDisk();
        program.Write("program.json", $$"""{ "title": "Small works", "timeZone": "Etc/UTC", "costs": {{costs}}{{more}} }""");
        return program;
    }

    private void Copy(Action<JsonObject> change)
    {
        foreach (var file in Directory.GetFiles(Sample, "*.csv")) File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        var program = JsonNode.Parse(File.ReadAllText(Path.Combine(Sample, "program.json")))!.AsObject();
        change(program);
        File.WriteAllText(Path.Combine(folder, "program.json"), program.ToJsonString());
    }
}
