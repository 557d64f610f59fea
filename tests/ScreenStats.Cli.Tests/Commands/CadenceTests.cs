using System.Text.Json;
using System.Text.RegularExpressions;
using ScreenStats.Cli.Terminal;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed partial class CadenceTests : IDisposable
{
    private static readonly string[] Known = ["--sensitivity", "0.6", "--specificity", "0.9995", "--window", "0,7", "--infectious", "0,7", "--incidence", "0.0005", "--people", "1000"];
    private readonly string folder = Directory.CreateTempSubdirectory("cadence").FullName;

    public static TheoryData<string, string[]> Answers => new()
    {
        { "cadence-limits", ["--every", "3.5,7", "--sensitivity", "61/97", "--specificity", "0.998[0.996,0.999]", "--window", "3,10", "--infectious", "2,8", "--delay", "1", "--incidence", "12/24000", "--people", "400"] },
        { "cadence-limits-json", ["--every", "7", "--sensitivity", "0.73[0.65,0.80]", "--specificity", "2391/2400", "--window", "3,10", "--json"] },
        {
            "cadence-course", ["--every", "3.5,7", "--weekdays", "Thursday,Monday", "--sensitivity", "0.6", "--specificity", "0.998", "--window", "3,10", "--infectious", "2,8", "--delay", "0.5", "--confirmation-delay", "1.5",
                "--misses", "0.3", "--participation", "0.85", "--symptoms", "0.4,5,0.3,0.9", "--incidence", "0.0005", "--people", "400", "--spread", "1.4", "--dispersion", "0.4", "--brought-in", "0.6", "--days", "60"]
        },
        { "cadence-course-undefined", ["--weekdays", "Monday", "--sensitivity", "0/0", "--window", "3,10", "--spread", "2", "--people", "1"] },
        { "cadence-course-undefined-json", ["--weekdays", "Monday", "--sensitivity", "0", "--specificity", "1", "--window", "3,10", "--infectious", "5,5", "--incidence", "0", "--people", "1000000", "--json"] },
    };

    public void Dispose() => Directory.Delete(folder, true);

    [Theory]
    [MemberData(nameof(Answers))]
    public void An_answer_is_the_same_under_every_culture(string name, string[] args)
    {
        foreach (var culture in (string[])["", "de-DE", "tr-TR"])
        {
            var run = Runner.Under(culture, ["cadence", .. args]);
            run.Errors.Should().BeEmpty();
            run.Code.Should().Be(0);
            run.Output.Should().NotContain("NaN").And.NotContain("Infinity").And.NotContain("∞");
            Golden.Check($"cli/{name}.txt", run.Output);
        }
    }

    [Fact]
    public void Limits_stand_beside_the_fields_and_change_none_of_them()
    {
        string[] plain = ["cadence", "--every", "3.5,7", "--sensitivity", "0.628865979381443298", "--window", "3,10", "--infectious", "2,8", "--specificity", "0.99625", "--incidence", "0.0005", "--people", "400", "--json"];
        string[] counted = ["cadence", "--every", "3.5,7", "--sensitivity", "61/97", "--window", "3,10", "--infectious", "2,8", "--specificity", "2391/2400", "--incidence", "12/24000", "--people", "400", "--json"];
        using var exact = JsonDocument.Parse(Runner.Of(plain).Output);
        using var limited = JsonDocument.Parse(Runner.Of(counted).Output);

        foreach (var (one, other) in exact.RootElement.GetProperty("options").EnumerateArray().Zip(limited.RootElement.GetProperty("options").EnumerateArray()))
        {
            foreach (var field in one.EnumerateObject())
            {
                other.GetProperty(field.Name).GetDouble().Should().BeApproximately(field.Value.GetDouble(), 1e-9 * Math.Max(1, field.Value.GetDouble()));
                if (field.Name is "everyDays" or "screensPerPersonYear") continue;
                other.GetProperty(field.Name + "Lower").GetDouble().Should().BeLessThan(field.Value.GetDouble());
                other.GetProperty(field.Name + "Upper").GetDouble().Should().BeGreaterThan(field.Value.GetDouble());
            }
        }

        exact.RootElement.TryGetProperty("limits", out _).Should().BeFalse();
        limited.RootElement.GetProperty("limits").GetProperty("draws").GetInt32().Should().Be(2000);
        limited.RootElement.GetProperty("sensitivityLower").GetDouble().Should().BeApproximately(0.5293, 5e-3, "Wilson's limits of 61/97");
    }

    // One screen falls into a window as long as the interval, so what is found is the sensitivity, and its limits are those of 61/97 (Jeffreys: R 4.2.2, qbeta(c(.025, .975), 61.5, 36.5)).
    [Fact]
    public void Limits_are_those_of_the_counts_where_the_figure_is_the_sensitivity()
    {
        using var json = JsonDocument.Parse(Runner.Of("cadence", "--every", "7", "--sensitivity", "61/97", "--window", "3,10", "--json").Output);
        var option = json.RootElement.GetProperty("options")[0];
        option.GetProperty("detectionProbability").GetDouble().Should().BeApproximately(61.0 / 97, 1e-12);
        option.GetProperty("detectionProbabilityLower").GetDouble().Should().BeApproximately(0.529937, 2e-4);
        option.GetProperty("detectionProbabilityUpper").GetDouble().Should().BeApproximately(0.720216, 2e-4);
    }

    [Fact]
    public void A_box_by_day_and_windows_give_the_same()
    {
        File.WriteAllText(Path.Combine(folder, "box.csv"), "day,detection,infectiousness\n0,0.6,5\n7,0.6,5\n");
        using var windows = JsonDocument.Parse(Runner.Of(["cadence", "--every", "2,7", "--course", "windows", .. Known, "--misses", "0.2", "--json"]).Output);
        using var byDay = JsonDocument.Parse(Runner.In(new RunnerEnvironment { Folder = folder },
            "cadence", "--every", "2,7", "--course", "by-day", "box.csv", "--specificity", "0.9995", "--incidence", "0.0005", "--people", "1000", "--misses", "0.2", "--json").Output);

        foreach (var (one, other) in windows.RootElement.GetProperty("options").EnumerateArray().Zip(byDay.RootElement.GetProperty("options").EnumerateArray()))
        {
            foreach (var name in (string[])["detectionProbability", "infectiousDaysRemoved", "fractionRemoved", "truePositivesPerYear", "positivePredictiveValue"])
                other.GetProperty(name).GetDouble().Should().BeApproximately(one.GetProperty(name).GetDouble(), 1e-6 * Math.Max(1, one.GetProperty(name).GetDouble()));
        }

        byDay.RootElement.GetProperty("sensitivity").ValueKind.Should().Be(JsonValueKind.Null);
        byDay.RootElement.GetProperty("course").GetProperty("file").GetString().Should().Be("box.csv");
    }

    // Larremore et al. 2021 (of the model's figures from memory), computed in the reference file: limit 1e5, every 3 and 7 days, same day: .806 and .552.
    [Fact]
    public void Viral_loads_give_the_reference_and_show_every_figure_of_their_model()
    {
        using var json = JsonDocument.Parse(Runner.Of("cadence", "--every", "3,7", "--course", "viral-load", "--specificity", "0.998", "--json").Output);
        var options = json.RootElement.GetProperty("options");
        var error = json.RootElement.GetProperty("course").GetProperty("largestStandardError").GetDouble();
        options[0].GetProperty("fractionRemoved").GetDouble().Should().BeApproximately(0.806, 4 * (error + 0.0013));
        options[1].GetProperty("fractionRemoved").GetDouble().Should().BeApproximately(0.552, 4 * (error + 0.0013));
        json.RootElement.GetProperty("course").GetProperty("viralLoads").GetProperty("peakLevel").GetProperty("upper").GetDouble().Should().Be(11);
        json.RootElement.GetProperty("window").ValueKind.Should().Be(JsonValueKind.Null);

        var text = Runner.Of("cadence", "--every", "3", "--course", "viral-load", "--detection-limit", "3", "--infectiousness", "step").Output;
        text.Should().Contain("start on day 2.5 to 3.5").And.Contain("positive from 3 on").And.Contain("alike at any load above").And.Contain("standard errors up to");
    }

    [Theory]
    [InlineData("--weekdays", "--weekdays", "Monday,Funday")]
    [InlineData("--weekdays", "--weekdays", "Monday,Monday")]
    [InlineData("--course", "--every", "7", "--course", "curve")]
    [InlineData("--course", "--every", "7", "--course", "by-day")]
    [InlineData("--course", "--every", "7", "--course", "viral-load", "course.csv")]
    [InlineData("--participation", "--every", "7", "--participation", "85")]
    [InlineData("--misses", "--every", "7", "--misses", "1")]
    [InlineData("--symptoms", "--every", "7", "--symptoms", "0.4")]
    [InlineData("--symptoms", "--every", "7", "--symptoms", "0.4,0")]
    [InlineData("--symptoms", "--every", "7", "--course", "viral-load", "--symptoms", "0.4,5")]
    [InlineData("--confirmation-delay", "--every", "7", "--confirmation-delay", "-1")]
    [InlineData("--spread", "--every", "7", "--spread", "-1")]
    [InlineData("--spread", "--every", "7", "--dispersion", "0.4")]
    [InlineData("--dispersion", "--every", "7", "--spread", "2", "--dispersion", "0")]
    [InlineData("--days", "--every", "7", "--spread", "2", "--days", "0")]
    [InlineData("--detection-limit", "--every", "7", "--detection-limit", "5")]
    [InlineData("--infectiousness", "--every", "7", "--course", "viral-load", "--infectiousness", "linear")]
    [InlineData("--seed", "--every", "7", "--seed", "-1")]
    [InlineData("--every", "--every", "0.001", "--misses", "0.3")]
    [InlineData("--window", "--every", "7", "--window", "0,5000", "--misses", "0.3")]
    public void What_cannot_be_is_refused_by_name(string name, params string[] args)
    {
        string[] missing = args.Contains("viral-load") ? [] : args.Contains("--window") ? ["--sensitivity", "0.6"] : ["--sensitivity", "0.6", "--window", "0,7"];
        var run = Runner.Of(["cadence", .. args, .. missing]);
        run.Code.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Errors.Should().Contain(name).And.NotContain("   at ");
    }

    [Fact]
    public void A_course_says_what_must_be_left_out_with_it()
    {
        File.WriteAllText(Path.Combine(folder, "c.csv"), "day,detection,infectiousness\n0,0,0\n7,1,1\n");
        var here = new RunnerEnvironment { Folder = folder };
        Runner.In(here, "cadence", "--every", "7", "--course", "by-day", "c.csv", "--sensitivity", "0.6").Errors.Should().Contain("--sensitivity: the course by day holds");
        Runner.In(here, "cadence", "--every", "7", "--course", "by-day", "c.csv", "--window", "0,7").Errors.Should().Contain("--window belongs to a course by windows");
        Runner.In(here, "cadence", "--every", "7", "--course", "viral-load", "--infectious", "0,7").Errors.Should().Contain("--infectious belongs to a course by windows");
    }

    [Fact]
    public void A_course_that_cannot_be_read_is_told_with_its_line_and_without_its_text()
    {
        File.WriteAllText(Path.Combine(folder, "c.csv"), "day,detection,infectiousness\n0,0,0\n7,Erika,1\n");
        var run = Runner.In(new RunnerEnvironment { Folder = folder }, "cadence", "--every", "7", "--course", "by-day", "c.csv");
        run.Code.Should().Be(1);
        run.Output.Should().BeEmpty();
        run.Errors.Should().Contain("c.csv").And.Contain("3").And.Contain("detection must be a fraction").And.NotContain("Erika");
    }

    [Theory]
    [InlineData("0", "1", "0", "1000000")]
    [InlineData("1", "0", "1", "1")]
    [InlineData("0/5", "5/5", "0/100", "3")]
    [InlineData("5/5", "0/5", "100/100", "1000000000000")]
    public void Extremes_give_figures_or_reasons_and_never_a_nan(string sensitivity, string specificity, string incidence, string people)
    {
        foreach (var more in (string[][])[[], ["--misses", "0.999", "--participation", "0"], ["--delay", "100", "--spread", "30", "--dispersion", "0.01"], ["--symptoms", "1,1", "--spread", "2"], ["--infectious", "5,5", "--spread", "0"]])
        {
            string[] infectious = more.Contains("--infectious") ? [] : ["--infectious", "2,8"];
            var run = Runner.Of(["cadence", "--every", "0.05,365000", "--weekdays", "Sunday", "--sensitivity", sensitivity, "--specificity", specificity, "--window", "3,10", "--incidence", incidence, "--people", people, .. infectious, .. more, "--json"]);
            run.Code.Should().Be(0, run.Errors);
            run.Output.Should().NotContain("NaN").And.NotContain("Infinity");
            using var json = JsonDocument.Parse(run.Output);
            json.RootElement.GetProperty("options").GetArrayLength().Should().Be(3);
        }
    }

    [Fact]
    public void All_that_is_missing_is_told_in_one_message()
    {
        var run = Runner.Of("cadence");
        run.Code.Should().Be(2);
        run.Errors.Should().Contain("missing: --every 3.5,7 (or --weekdays Monday,Thursday), --sensitivity 0.6, --window 3,10.").And.Contain("--from").And.Contain("--course");
        Runner.Of("cadence", "--course", "viral-load").Errors.Should().Contain("missing: --every").And.NotContain("--sensitivity");
    }

    [Fact]
    public void From_a_program_comes_what_the_line_leaves_out_and_the_answer_says_so()
    {
        string[] from = ["cadence", "--from", RepositoryRoot.Combine("sample-data", "marrowlight")];
        using var all = JsonDocument.Parse(Runner.Of([.. from, "--json"]).Output);
        var root = all.RootElement;
        root.GetProperty("people").GetInt64().Should().Be(900);
        root.GetProperty("window").EnumerateArray().Select(end => end.GetDouble()).Should().Equal(2, 12.5);
        root.GetProperty("options").GetArrayLength().Should().Be(7, "six plans with screens, and what was done");
        root.GetProperty("options")[6].GetProperty("asDone").GetBoolean().Should().BeTrue();
        root.GetProperty("options")[6].GetProperty("spread").GetProperty("reproduction").GetDouble().Should().BeApproximately(0.25, 1e-9, "three in four are brought in as it was");
        root.GetProperty("taken").EnumerateArray().Select(one => one.GetProperty("name").GetString()).Should().Contain(["sensitivity", "specificity", "incidence", "gaps", "people", "participation", "brought-in"]);
        root.GetProperty("incidence").GetDouble().Should().BeInRange(root.GetProperty("incidenceLower").GetDouble(), root.GetProperty("incidenceUpper").GetDouble());

        var run = Runner.Of([.. from, "--every", "3.5", "--sensitivity", "0.5", "--incidence", "0.001", "--people", "50", "--spread", "1.5"]);
        run.Code.Should().Be(0);
        run.Output.Should().Contain("Sensitivity 0.5 from day 2").And.Contain("people 50.").And.Contain("one case infects 1.5 without screening").And.Contain("as it was")
            .And.Contain("specificity 0.99").And.NotContain("  sensitivity 0").And.NotContain("  people 900");
    }

    [Fact]
    public void From_a_program_without_a_course_the_missing_window_is_asked_for()
    {
        using var program = new ProgramOnDisk();
        var run = Runner.In(program.Here, "cadence", "--from", "works", "--every", "7", "--sensitivity", "0.6");
        run.Code.Should().Be(2);
        run.Errors.Should().Contain("missing: --window 3,10.");
        var answered = Runner.In(program.Here, "cadence", "--from", "works", "--every", "7", "--sensitivity", "0.6", "--window", "3,10", "--json");
        answered.Code.Should().Be(0);
        using var json = JsonDocument.Parse(answered.Output);
        json.RootElement.GetProperty("people").GetInt64().Should().Be(4);
        Runner.In(program.Here, "cadence", "--from", "nowhere", "--every", "7").Code.Should().Be(1);
    }

    [Fact]
    public void A_course_by_day_of_the_program_file_is_taken_too()
    {
        using var program = new ProgramOnDisk();
        program.Write("program.json", """{ "timeZone": "Etc/UTC", "cadence": { "course": { "kind": "by-day", "file": "course.csv" }, "reproduction": 1.2 } }""");
        program.Write("course.csv", "day,detection,infectiousness\n2,0,0\n5,0.9,1\n10,0,0\n");
        using var json = JsonDocument.Parse(Runner.In(program.Here, "cadence", "--from", "works", "--every", "7", "--json").Output);
        json.RootElement.GetProperty("course").GetProperty("kind").GetString().Should().Be("by-day");
        json.RootElement.GetProperty("options")[0].GetProperty("detectionProbability").GetDouble().Should().BeInRange(0.3, 0.9);
        json.RootElement.GetProperty("spread").GetProperty("reproduction").GetDouble().Should().Be(1.2);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bytes_and_another_other_limits()
    {
        string[] args = ["cadence", "--every", "7", "--sensitivity", "61/97", "--specificity", "0.998[0.996,0.999]", "--window", "3,10", "--incidence", "12/24000", "--json"];
        Runner.Of([.. args, "--seed", "5"]).Output.Should().Be(Runner.Of([.. args, "--seed", "5"]).Output).And.NotBe(Runner.Of(args).Output);
    }

    [Fact]
    public void Tables_fit_into_80_columns_with_limits_too() => Runner.In(
        new RunnerEnvironment { Width = 80 }, "cadence", "--every", "3.5,14", "--weekdays", "Monday,Wednesday,Friday", "--sensitivity", "61/97", "--specificity", "0.998[0.996,0.999]",
        "--window", "3,10", "--infectious", "2,8", "--incidence", "12/24000", "--people", "1000", "--spread", "1.5").Output.Split("Screening is not diagnosis")[0].Split('\n')
        .Where(line => !line.Contains(". ", StringComparison.Ordinal) && !line.EndsWith('.') && !line.EndsWith(':')).Should().OnlyContain(line => line.Length <= 80);

    [Fact]
    public void Examples_of_the_readme_work_as_written()
    {
        var readme = File.ReadAllText(RepositoryRoot.Combine("README.md")).Replace(" \\\n", " ", StringComparison.Ordinal);
        var examples = Example().Matches(readme).Select(match => match.Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToList();
        examples.Should().HaveCountGreaterThanOrEqualTo(3);
        foreach (var example in examples)
        {
            var run = Runner.In(new RunnerEnvironment { Folder = RepositoryRoot.Combine() }, example);
            run.Errors.Should().BeEmpty(string.Join(' ', example));
            run.Code.Should().Be(0);
        }
    }

    [GeneratedRegex("^dotnet run --project src/ScreenStats.Cli -- (cadence .*)$", RegexOptions.Multiline)]
    private static partial Regex Example();
}
