using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;

namespace ScreenStats.Counting.Tests.Programs.Cadence;

public sealed class CadenceReadingTests
{
    private const string Whole = """
        {
          "options": ["daily", "none", { "name": "office days", "weekdays": ["Thursday", "Monday"] }, "weekly", 3, { "everyDays": 10 }],
          "planned": "office days",
          "plannedAt": [ { "sites": ["A*", "B?"], "option": "weekly" }, { "sites": ["*"], "option": { "weekdays": ["Sunday", "Tuesday", "Monday"] } } ],
          "course": {
            "kind": "windows",
            "detectable": { "from": { "value": 3, "lower": 2, "upper": 4, "source": "a study" }, "to": 12.5 },
            "infectious": { "from": 2, "to": { "value": 8, "lower": 6, "upper": 11 } },
            "source": "made up",
            "symptoms": { "share": 0.4, "onsetDays": 5, "spread": { "value": 0.4, "lower": 0.3, "upper": 0.5 }, "isolate": 0.8 }
          },
          "delayDays": 0, "confirmatoryDelayDays": { "value": 1.5, "lower": 1, "upper": 3 }, "isolateOn": "confirmation", "repeatedMisses": 0.3,
          "participation": 0.85, "people": 900, "days": 182, "incidence": { "value": 0.0008, "lower": 0.0005, "upper": 0.0012 },
          "reproduction": 1.4, "broughtIn": { "value": 0.7, "lower": 0.5, "upper": 0.9 }, "dispersion": 0.4, "immunityDays": { "value": 180, "lower": 120, "upper": 365 }, "falseAlarmDays": 2,
          "worthwhile": 1.5, "sensitivity": "61/97", "specificity": { "value": 0.998, "lower": 0.997, "upper": 0.999 },
          "draws": 5000, "seed": 7, "source": "the works council",
        }
        """;

    [Fact]
    public void A_whole_section_gives_every_setting()
    {
        var cadence = Read(Whole);

        cadence.OptionsStated.Should().BeTrue();
        cadence.Options.Select(option => option.Name).Should().Equal("none", "every 10 days", "weekly", "office days", "every 3 days", "daily");
        cadence.Options[3].Weekdays.Should().Equal(DayOfWeek.Monday, DayOfWeek.Thursday);
        cadence.Options[3].EveryDays.Should().BeNull();
        cadence.Planned.Should().BeSameAs(cadence.Options[3]);
        cadence.PlanAt("A7")!.Name.Should().Be("weekly");
        cadence.PlanAt("B77")!.Name.Should().Be("Monday, Tuesday and Sunday");
        var course = cadence.Course!;
        course.Kind.Should().Be(CourseKind.Windows);
        course.DetectableFrom.Should().Be(new StatedRange(3, 2, 4, "a study"));
        course.DetectableTo.Should().Be(new StatedRange(12.5));
        course.InfectiousFrom.Should().Be(new StatedRange(2));
        course.InfectiousTo.Should().Be(new StatedRange(8, 6, 11));
        course.Source.Should().Be("made up");
        course.Days.Should().BeEmpty();
        course.Symptoms.Should().Be(new SymptomSettings { Share = new(0.4), OnsetDays = new(5), Spread = new(0.4, 0.3, 0.5), Isolate = new(0.8) });
        cadence.DelayDays.Should().Be(new StatedRange(0));
        cadence.ConfirmatoryDelayDays.Should().Be(new StatedRange(1.5, 1, 3));
        cadence.IsolateOn.Should().Be(IsolateOn.Confirmation);
        cadence.RepeatedMisses.Should().Be(new StatedRange(0.3));
        cadence.Participation.Should().Be(new StatedRange(0.85));
        cadence.People.Should().Be(900);
        cadence.Days.Should().Be(182);
        cadence.Incidence.Should().Be(new StatedRange(0.0008, 0.0005, 0.0012));
        cadence.Reproduction.Should().Be(new StatedRange(1.4));
        cadence.BroughtIn.Should().Be(new StatedRange(0.7, 0.5, 0.9));
        cadence.Dispersion.Should().Be(new StatedRange(0.4));
        cadence.ImmunityDays.Should().Be(new StatedRange(180, 120, 365));
        cadence.FalseAlarmDays.Should().Be(new StatedRange(2));
        cadence.Worthwhile.Should().Be(1.5);
        cadence.Sensitivity.Should().Be(new StatedAccuracy(61.0 / 97, 61, 97, null, null));
        cadence.Specificity.Should().Be(new StatedAccuracy(0.998, null, null, 0.997, 0.999));
        cadence.Draws.Should().Be(5000);
        cadence.Seed.Should().Be(7);
        cadence.Source.Should().Be("the works council");
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "cadence": {} }""")]
    [InlineData("""{ "cadence": null }""")]
    public void Nothing_stated_is_nothing_known_but_the_usual_options(string program)
    {
        var cadence = ProgramFile.Parse(program).Cadence;

        cadence.Should().BeEquivalentTo(new CadenceSettings());
        cadence.OptionsStated.Should().BeFalse();
        cadence.Options.Select(option => option.Name).Should().Equal("none", "monthly", "fortnightly", "weekly", "twice-weekly", "every-second-day", "daily");
        cadence.Options[0].IsNone.Should().BeTrue();
        cadence.Options.Select(option => Math.Round(option.ScreensPerDay * 365, 9)).Should().Equal(0, 12, 26.071428571, 52.142857143, 104.285714286, 182.5, 365);
        cadence.Course.Should().BeNull();
        cadence.PlanAt("anywhere").Should().BeNull();
        cadence.Days.Should().Be(91);
        cadence.Draws.Should().Be(2000);
    }

    [Fact]
    public void Other_kinds_of_course_have_keys_of_their_own()
    {
        var byDay = Read("""{ "course": { "kind": "by-day", "file": "course.csv", "source": "a study" } }""").Course!;
        byDay.Kind.Should().Be(CourseKind.ByDay);
        byDay.File.Should().Be("course.csv");
        byDay.Days.Should().BeEmpty("the file is read when the program is opened");

        var load = Read("""{ "course": { "kind": "viral-load", "detectionLimit": { "value": 5, "lower": 4.5, "upper": 5.5 }, "infectiousness": "step" } }""").Course!;
        load.DetectionLimit.Should().Be(new StatedRange(5, 4.5, 5.5));
        load.Infectiousness.Should().Be(InfectiousnessKind.Step);
        load.DetectableFrom.Should().BeNull();
    }

    [Fact]
    public void A_plan_in_days_is_the_option_of_as_many_days()
    {
        Read("""{ "planned": 3.5 }""").Planned!.Name.Should().Be("twice-weekly");
        Read("""{ "planned": 5 }""").Planned.Should().Be(new CadenceOptionSettings { Name = "every 5 days", EveryDays = 5 });
        Read("""{ "options": ["none", "daily"], "planned": "weekly" }""").Planned!.EveryDays.Should().Be(7);
    }

    [Theory]
    [InlineData("""{ "delayDay": 1 }""", "cadence.delayDay: unknown key", "\"delayDays\"")]
    [InlineData("""{ "course": { "kind": "windows", "detectible": {}, "detectable": { "from": 1, "to": 2 } } }""", "cadence.course.detectible: unknown key", "\"detectable\"")]
    [InlineData("""{ "course": { "kind": "windows", "detectable": { "from": 1, "too": 3, "to": 2 } } }""", "cadence.course.detectable.too: unknown key", "\"to\"")]
    [InlineData("""{ "course": { "kind": "by-day", "file": "a", "symptoms": { "share": 0, "onsetDays": 4, "isolated": 1 } } }""", "cadence.course.symptoms.isolated: unknown key", "\"isolate\"")]
    [InlineData("""{ "broughtIn": { "value": 0.5, "uper": 0.6 } }""", "cadence.broughtIn.uper: unknown key", "\"upper\"")]
    [InlineData("""{ "options": [ { "weekday": ["Monday"], "everyDays": 2 } ] }""", "cadence.options[0].weekday: unknown key", "\"weekdays\"")]
    [InlineData("""{ "plannedAt": [ { "sites": ["A"], "option": "weekly", "site": "B" } ] }""", "cadence.plannedAt[0].site: unknown key", "\"sites\"")]
    public void An_unknown_key_names_its_path_and_the_nearest_known_one(string text, string start, string nearest)
    {
        var found = Problems(text).Should().ContainSingle().Subject;
        found.Code.Should().Be(ProgramFile.UnknownKeyCode);
        found.Message.Should().StartWith(start).And.Contain(nearest);
    }

    [Theory]
    [InlineData("[]", "cadence must be an object in braces")]
    [InlineData("""{ "options": "daily" }""", "cadence.options must be a list of at least one")]
    [InlineData("""{ "options": [] }""", "cadence.options must be a list of at least one")]
    [InlineData("""{ "options": ["biweekly"] }""", "cadence.options[0] must be one of \"none\", \"monthly\"")]
    [InlineData("""{ "options": [0] }""", "for no screening write \"none\"")]
    [InlineData("""{ "options": ["daily", "daily"] }""", "cadence.options[1] must be different")]
    [InlineData("""{ "options": [3, { "everyDays": 2, "name": "every 3 days" }] }""", "cadence.options[1] must be different")]
    [InlineData("""{ "options": [{}] }""", "with \"everyDays\" or \"weekdays\", and not with both")]
    [InlineData("""{ "options": [{ "everyDays": 2, "weekdays": ["Monday"] }] }""", "and not with both")]
    [InlineData("""{ "options": [{ "everyDays": 0.1 }] }""", "cadence.options[0].everyDays must be a number of days")]
    [InlineData("""{ "options": [{ "weekdays": [] }] }""", "cadence.options[0].weekdays must be a list of weekdays")]
    [InlineData("""{ "options": [{ "weekdays": ["Mon"] }] }""", "cadence.options[0].weekdays[0] must be one of \"Monday\", \"Tuesday\"")]
    [InlineData("""{ "options": [{ "weekdays": ["Monday", "Monday"] }] }""", "in which no weekday stands twice")]
    [InlineData("""{ "options": [{ "weekdays": ["Monday"], "name": "daily" }] }""", "cadence.options[0].name must be other than the words")]
    [InlineData("""{ "options": [{ "weekdays": ["Monday"], "name": "shift days" }], "planned": "shift day" }""", "or the name of an option: \"shift days\"")]
    [InlineData("""{ "planned": true }""", "cadence.planned must be one of")]
    [InlineData("""{ "plannedAt": { } }""", "cadence.plannedAt must be a list")]
    [InlineData("""{ "plannedAt": [ { "sites": [], "option": "weekly" } ] }""", "at least one site pattern")]
    [InlineData("""{ "plannedAt": [ { "sites": ["A"] } ] }""", "and \"option\"")]
    [InlineData("""{ "course": "windows" }""", "cadence.course must be an object")]
    [InlineData("""{ "course": { } }""", "given with its \"kind\"")]
    [InlineData("""{ "course": { "kind": "curve" } }""", "\"windows\", \"by-day\", \"viral-load\"")]
    [InlineData("""{ "course": { "kind": "windows" } }""", "given with \"detectable\"")]
    [InlineData("""{ "course": { "kind": "by-day" } }""", "given with \"file\"")]
    [InlineData("""{ "course": { "kind": "viral-load" } }""", "given with \"detectionLimit\"")]
    [InlineData("""{ "course": { "kind": "viral-load", "detectionLimit": 100000 } }""", "the logarithm to base 10")]
    [InlineData("""{ "course": { "kind": "by-day", "file": "a.csv", "detectable": { "from": 1, "to": 2 } } }""", "cadence.course.detectable must be left out: it belongs to a course of kind \"windows\"")]
    [InlineData("""{ "course": { "kind": "windows", "detectable": { "from": 3 } } }""", "given with \"from\" and \"to\"")]
    [InlineData("""{ "course": { "kind": "windows", "detectable": { "from": 5, "to": 5 } } }""", "cadence.course.detectable.to must be later than \"from\"")]
    [InlineData("""{ "course": { "kind": "windows", "detectable": { "from": -1, "to": 5 } } }""", "cadence.course.detectable.from must be a number of days from 0 to 3660")]
    [InlineData("""{ "course": { "kind": "windows", "detectable": { "from": "3", "to": 5 } } }""", "or { \"value\": ..., \"lower\": ..., \"upper\": ... }")]
    [InlineData("""{ "course": { "kind": "by-day", "file": "a.csv", "symptoms": { "share": 0.4 } } }""", "given with \"share\"")]
    [InlineData("""{ "course": { "kind": "by-day", "file": "a.csv", "symptoms": { "share": 0.4, "onsetDays": 0 } } }""", "a number of days above 0")]
    [InlineData("""{ "course": { "kind": "by-day", "file": "a.csv", "symptoms": { "share": 0.4, "onsetDays": 4, "spread": 3 } } }""", "from 0 to 2")]
    [InlineData("""{ "delayDays": { "value": 2, "lower": 3, "upper": 4 } }""", "cadence.delayDays must be in order: lower, value, upper")]
    [InlineData("""{ "delayDays": { "value": 2, "lower": 1 } }""", "with neither")]
    [InlineData("""{ "delayDays": { "lower": 1, "upper": 2 } }""", "given with a \"value\"")]
    [InlineData("""{ "delayDays": 400 }""", "from 0 to 366")]
    [InlineData("""{ "delayDays": { "value": 1, "lower": 1e999, "upper": 2 } }""", "cadence.delayDays.lower must be a number of days")]
    [InlineData("""{ "isolateOn": "result" }""", "\"screen\", \"confirmation\"")]
    [InlineData("""{ "repeatedMisses": 1 }""", "a correlation from 0 to below 1")]
    [InlineData("""{ "participation": 85 }""", "for 85 percent write 0.85")]
    [InlineData("""{ "broughtIn": { "value": 0.5, "lower": 0.1, "upper": 1.2 } }""", "cadence.broughtIn.upper must be a fraction")]
    [InlineData("""{ "people": 0 }""", "a whole number of people")]
    [InlineData("""{ "days": 91.5 }""", "a whole number of days")]
    [InlineData("""{ "incidence": 12 }""", "never a prevalence")]
    [InlineData("""{ "reproduction": -1 }""", "that one case causes without any screening")]
    [InlineData("""{ "dispersion": 0 }""", "a number above 0")]
    [InlineData("""{ "immunityDays": 0.5 }""", "days after which someone infected can be infected again, from 1 to 36600")]
    [InlineData("""{ "immunityDays": { "value": 180, "lower": 200, "upper": 365 } }""", "cadence.immunityDays")]
    [InlineData("""{ "falseAlarmDays": "two" }""", "from 0 to 366")]
    [InlineData("""{ "worthwhile": -1 }""", "per 1,000 more screens")]
    [InlineData("""{ "sensitivity": 80 }""", "for 80 percent write 0.8")]
    [InlineData("""{ "specificity": "98%" }""", "counts such as \"61/97\"")]
    [InlineData("""{ "draws": 1000 }""", "from 2000 to 100000")]
    [InlineData("""{ "seed": -1 }""", "a whole number from 0")]
    [InlineData("""{ "source": "" }""", "a text in quotes")]
    public void A_wrong_value_says_what_to_write(string text, string part)
    {
        var found = Problems(text).Should().ContainSingle().Subject;
        found.Code.Should().Be(ProgramFile.WrongValueCode);
        found.Message.Should().Contain(part);
    }

    [Fact]
    public void Too_many_options_are_refused() =>
        Problems("{ \"options\": [" + string.Join(", ", Enumerable.Range(1, 51)) + "] }").Should().ContainSingle().Which.Message.Should().Contain("at most 50");

    [Fact]
    public void Everything_wrong_is_told_at_once() =>
        Problems("""
            {
              "delayDays": -1,
              "peopel": 5,
              "course": { "kind": "windows", "detectable": { "from": 5, "to": 2 }, "infectious": { "from": 1 } }
            }
            """).Should().HaveCount(4).And.BeInAscendingOrder(problem => problem.Line);

    private static CadenceSettings Read(string cadence) => ProgramFile.Parse($"{{ \"cadence\": {cadence} }}").Cadence;

    private static ImmutableArray<Diagnostic> Problems(string cadence) =>
        FluentActions.Invoking(() => Read(cadence)).Should().Throw<UnusableDataException>().Which.Diagnostics;
}
