using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Synthesis;
using ScreenStats.Synthesis.Planning;
using ScreenStats.Synthesis.Planning.Surroundings;
using ScreenStats.Testing;

namespace ScreenStats.Tests.Synthesis;

public sealed class SurroundingsTests
{
    private static readonly SynthesisPlan Standard = SynthesisPlan.Standard with { Weeks = 8 };

    private static SynthesisPlan Plan(double incidenceFactor = 1) => Standard with
    {
        Sites = [.. Standard.Sites.Select((site, index) => site with { Region = index == 0 ? null : $"Region {index}" })],
        Changes = [new SynthesisChange { On = Standard.FirstDay.AddDays(20), What = "swabs by the staff", Sites = [Standard.Sites[0].Name] }],
        Outbreaks = [new SynthesisOutbreak { Site = Standard.Sites[1].Name, From = Standard.FirstDay.AddDays(14), To = Standard.FirstDay.AddDays(27), IncidenceFactor = incidenceFactor }],
        Community = new SynthesisCommunity { Source = "fictional", Values = [new(Standard.FirstDay, 0.01, 0.005, 0.02), new(Standard.FirstDay.AddDays(7), 0.02, 0.01, 0.03)] },
    };

    [Fact]
    public void What_is_stated_around_a_program_changes_no_row_of_it()
    {
        using var plain = new TemporaryFolder();
        using var told = new TemporaryFolder();
        SyntheticProgram.Write(Standard, 7, plain.Path);
        SyntheticProgram.Write(Plan(), 7, told.Path);

        File.ReadAllText(told.Combine("screening.csv")).Should().Be(File.ReadAllText(plain.Combine("screening.csv")));
        File.ReadAllText(told.Combine("confirmatory.csv")).Should().Be(File.ReadAllText(plain.Combine("confirmatory.csv")));
        File.Exists(plain.Combine("sites.csv")).Should().BeFalse();
        File.ReadLines(told.Combine("sites.csv")).Should().Equal(Standard.Sites.Select((site, index) => $"{site.Name},{(index == 0 ? "" : $"Region {index}")}").Prepend("site,region"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_reader_finds_the_outbreak_runs_of_the_truth_by_the_program_file_or_by_the_column(bool column)
    {
        using var folder = new TemporaryFolder();
        var plan = column ? Plan() with { ScreeningColumns = [.. Standard.ScreeningColumns, "outbreak"] } : Plan();
        var truth = SyntheticProgram.Write(plan, 7, folder.Path);

        var program = ScreeningProgram.Open(folder.Path);
        var cells = program.Read().Tally.Cells;

        program.Settings.Outbreaks.Should().HaveCount(column ? 0 : 1);
        program.Settings.Changes.Should().ContainSingle().Which.Sites.Should().Equal(Standard.Sites[0].Name);
        program.Settings.Community!.Values.Should().HaveCount(2);
        truth.OutbreakRuns.Should().BePositive();
        cells.Screens.Where(cell => cell.Occasion == Occasion.Outbreak).Sum(cell => cell.Runs).Should().Be(truth.OutbreakRuns);
        cells.Sites.Single(cell => cell.Site == Standard.Sites[0].Name).Region.Should().Be(Levels.None);
    }

    [Fact]
    public void An_outbreak_may_raise_the_incidence_at_its_site_on_its_days()
    {
        using var one = new TemporaryFolder();
        using var other = new TemporaryFolder();
        var plain = SyntheticProgram.Write(Plan(), 7, one.Path);
        var raised = SyntheticProgram.Write(Plan(incidenceFactor: 50), 7, other.Path);

        raised.Infected.Should().BeGreaterThan(plain.Infected);
    }

    [Fact]
    public void A_plan_that_cannot_be_carried_out_names_each_fault()
    {
        var plan = Plan() with
        {
            Changes = [new SynthesisChange { On = Standard.FirstDay, What = " ", Sites = ["Nowhere"] }],
            Outbreaks = [new SynthesisOutbreak { Site = "Nowhere", From = Standard.FirstDay, To = Standard.FirstDay.AddDays(-1), IncidenceFactor = -1 }],
            Community = new SynthesisCommunity { Measure = "incidence", Source = "", Values = [new(Standard.FirstDay, 2, 1, 1.5), new(Standard.FirstDay, 1, 1, 1)] },
        };

        FluentActions.Invoking(() => plan.Validate()).Should().Throw<UnusableDataException>().Which.Diagnostics.Select(one => one.Column).Should().BeEquivalentTo(
            "changes[0].what", "changes[0].sites", "outbreaks[0].site", "outbreaks[0].to", "outbreaks[0].incidenceFactor",
            "community.measure", "community.source", "community.values[0]", "community.values[1].from");
    }

    [Fact]
    public void A_plan_is_read_back_as_it_was_written() =>
        SynthesisPlan.Parse(Plan().ToJson()).ToJson().Should().Be(Plan().ToJson());

    [Fact]
    public void What_is_believed_of_an_infection_stands_in_the_program_file_as_planned_and_is_checked_first()
    {
        using var folder = new TemporaryFolder();
        SyntheticProgram.Write(With("""{ "planned": "weekly", "broughtIn": { "value": 0.7, "lower": 0.5, "upper": 0.9 } }"""), 7, folder.Path);
        var cadence = ScreeningProgram.Open(folder.Path).Settings.Cadence;
        cadence.Planned!.EveryDays.Should().Be(7);
        cadence.BroughtIn!.Upper.Should().Be(0.9);

        FluentActions.Invoking(() => With("""{ "broughtIn": 7, "corse": 1 }""").Validate()).Should().Throw<UnusableDataException>()
            .Which.Diagnostics.Should().HaveCount(2).And.OnlyContain(one => one.Column == "cadence");
        FluentActions.Invoking(() => With("""{ "course": { "kind": "by-day", "file": "course.csv" } }""").Validate()).Should().Throw<UnusableDataException>()
            .Which.Diagnostics.Should().ContainSingle().Which.Column.Should().Be("cadence.course.file");

        static SynthesisPlan With(string cadence) => Plan() with { Cadence = System.Text.Json.JsonDocument.Parse(cadence).RootElement };
    }

    [Fact]
    public void What_the_employer_says_of_prices_stands_in_the_program_file_as_planned_and_is_checked_first()
    {
        using var folder = new TemporaryFolder();
        var cadence = Json("""{ "options": ["none", { "name": "office days", "weekdays": ["Monday", "Thursday"] }] }""");
        var plan = Plan() with { Cadence = cadence, Costs = Json("""{ "currency": "EUR", "kit": 3, "rules": [{ "option": "none" }, { "above": 0.01, "option": "office days" }] }""") };
        SyntheticProgram.Write(plan, 7, folder.Path);
        var costs = ScreeningProgram.Open(folder.Path).Settings.Costs;
        costs.Kit!.Value.Should().Be(3);
        costs.Rules[1].Option.Name.Should().Be("office days");

        FluentActions.Invoking(() => (Plan() with { Cadence = Json("""{ "people": 0 }"""), Costs = Json("""{ "kit": -1, "kti": 3 }""") }).Validate()).Should().Throw<UnusableDataException>()
            .Which.Diagnostics.Select(one => one.Column).Should().BeEquivalentTo("cadence", "costs", "costs");

        static System.Text.Json.JsonElement Json(string text) => System.Text.Json.JsonDocument.Parse(text).RootElement;
    }

    [Fact]
    public void The_sample_states_what_its_schedules_are()
    {
        var sample = RepositoryRoot.Combine("sample-data", "marrowlight");
        var plan = SynthesisPlan.Read(Path.Combine(sample, "plan.json"));
        var cadence = ScreeningProgram.Open(sample).Settings.Cadence;

        foreach (var site in plan.Sites)
        {
            (cadence.PlanAt(site.Name)!.ScreensPerDay * 7).Should().BeApproximately(site.Schedule switch
            {
                SynthesisSchedule.Daily => 5,
                SynthesisSchedule.MondayAndThursday => 2,
                _ => 1,
            }, 1e-12);
        }

        cadence.People.Should().Be(plan.Sites.Sum(site => site.People));
        var course = cadence.Course!;
        course.DetectableFrom!.Lower.Should().BeLessThanOrEqualTo(plan.Infection.DetectableFromDay);
        course.DetectableTo!.Upper.Should().BeGreaterThanOrEqualTo(plan.Infection.DetectableFromDay + plan.Infection.DetectabilityByDay.Length);
        course.Symptoms!.Share.Value.Should().Be(plan.Infection.SymptomaticShare);
        course.Source.Should().Contain("fictional");
    }
}
