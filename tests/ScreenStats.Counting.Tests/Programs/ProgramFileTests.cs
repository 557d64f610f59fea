using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Surroundings;

namespace ScreenStats.Counting.Tests.Programs;

public sealed class ProgramFileTests
{
    private const string Whole = """
        {
          // what cannot be seen in the exports
          "title": "Harbour works", "timeZone": "Europe/Berlin", "dataAsOf": "2026-03-31T18:00+02:00",
          "exports": {
            "screening": { "files": ["screening-*.csv"], "columns": { "person": "badge" }, "words": { "NEG": "negative" }, "dateOrder": "day-first" },
            "confirmatory": { "words": { "ND": "negative" } }, "controls": {}, "headcount": null
          },
          "screens": [
            { "name": "Device one", "lots": ["A*"], "sensitivity": "61/97", "specificity": "2391/2400", "source": "leaflet",
              "readWindowMinutes": [10, 20], "runsPerKit": 40 },
            { "name": "Device two", "sensitivity": { "value": 0.73, "lower": 0.65, "upper": 0.80 }, "specificity": 0.995, },
          ],
          "confirmatoryTest": { "sensitivity": 0.98, "specificity": 1 },
          "prevalence": { "value": 0.004, "lower": 0.002, "upper": 0.008, "source": "survey" },
          "policy": { "confirmWithinHours": 48.5, "confirmBeforeHours": 0, "auditWithinHours": 12, "reportLagHours": 24,
                      "episodeDays": 60, "isolationDays": null, "followUp": ["inconclusive", "positive"],
                      "controlsRequired": ["daily", "new-lot"] },
          "audits": { "strata": [ { "name": "plant", "sites": ["H*"], "lots": ["A*"], "collection": "self" }, { "name": "rest", "negatives": 12345 } ] },
          "alarms": { "falseAlarmChance": 0.02, "falseAlarmEveryDays": 90, "invalidRateLimit": 0.04, "baselineDays": 14,
                      "acknowledged": [ { "rule": "lot-evidence", "level": "A-17", "until": "2026-01-31" }, { "rule": "invalid-rise", "level": "North" } ] },
          "changes": [ { "on": "2026-02-02", "what": "Swabs by the staff" }, { "on": "2026-01-13", "what": "Device two", "sites": ["N*", "South"] } ],
          "outbreaks": [ { "site": "North", "from": "2026-01-06", "to": "2026-01-19", "note": "night shift" }, { "site": "South", "from": "2026-03-01" } ],
          "community": { "measure": "positivity", "source": "bulletin", "until": "2026-03-01",
                         "values": [ { "from": "2025-12-29", "value": 0.012, "lower": 0.01, "upper": 0.02 }, { "from": "2026-01-05", "value": 0.02 } ] },
          "costs": {}, "cadence": {},
          "report": { "confidence": 0.9, "period": "month", "suppressBelow": 5, "controlLimits": "three-sigma", "compareBy": "region" },
        }
        """;

    [Fact]
    public void A_whole_file_gives_every_setting()
    {
        var settings = ProgramFile.Parse(Whole);

        settings.Title.Should().Be("Harbour works");
        settings.TimeZone.Should().Be("Europe/Berlin");
        settings.DataAsOf.Should().Be(new StatedMoment(new DateTime(2026, 3, 31, 18, 0, 0), TimeSpan.FromHours(2)));
        settings.Exports.Screening.Files.Should().Equal("screening-*.csv");
        settings.Exports.Screening.Columns.Should().ContainKey("person").WhoseValue.Should().Be("badge");
        settings.Exports.Screening.Words.Should().ContainKey("NEG").WhoseValue.Should().Be("negative");
        settings.Exports.Screening.DateOrder.Should().Be(DateOrder.DayFirst);
        settings.Exports.Confirmatory.Words.Should().ContainKey("ND");
        settings.Screens.Should().HaveCount(2);
        settings.Screens[0].Should().BeEquivalentTo(new ScreenSettings
        {
            Name = "Device one",
            Lots = ["A*"],
            Sensitivity = new(61.0 / 97, 61, 97, null, null),
            Specificity = new(2391.0 / 2400, 2391, 2400, null, null),
            Source = "leaflet",
            ReadFromMinutes = 10,
            ReadToMinutes = 20,
            RunsPerKit = 40,
        });
        settings.Screens[1].Sensitivity.Should().Be(new StatedAccuracy(0.73, null, null, 0.65, 0.80));
        settings.Screens[1].Specificity!.TakenAsExact.Should().BeTrue();
        settings.ConfirmatoryTest!.Specificity!.Value.Should().Be(1);
        settings.Policy.ControlsRequired.Should().Equal(ControlTrigger.NewLot, ControlTrigger.Daily);
        settings.Alarms.Should().BeEquivalentTo(new AlarmSettings
        {
            FalseAlarmChance = 0.02,
            FalseAlarmEveryDays = 90,
            InvalidRateLimit = 0.04,
            BaselineDays = 14,
            Acknowledged = [new("lot-evidence", "A-17", new DateOnly(2026, 1, 31)), new("invalid-rise", "North", null)],
        });
        settings.Prevalence.Should().Be(new PrevalenceSettings(0.004, 0.002, 0.008, "survey"));
        settings.Policy.Should().BeEquivalentTo(new PolicySettings
        {
            ConfirmWithinHours = 48.5,
            ConfirmBeforeHours = 0,
            AuditWithinHours = 12,
            ReportLagHours = 24,
            EpisodeDays = 60,
            FollowUp = [Outcome.Positive, Outcome.Inconclusive],
            ControlsRequired = [ControlTrigger.NewLot, ControlTrigger.Daily],
        });
        settings.Audits.Strata.Should().BeEquivalentTo(
        [
            new StratumSettings { Name = "plant", Sites = ["H*"], Lots = ["A*"], Collection = CollectedBy.Self },
            new StratumSettings { Name = "rest", Negatives = 12_345 },
        ]);
        settings.Report.Should().Be(new ReportSettings { Confidence = 0.9, Period = ReportPeriod.Month, SuppressBelow = 5, ControlLimits = ControlLimits.ThreeSigma, CompareBy = CompareBy.Region });
        settings.Changes.Should().BeEquivalentTo(
            [new ChangeSettings(new(2026, 1, 13), "Device two", ["N*", "South"]), new ChangeSettings(new(2026, 2, 2), "Swabs by the staff", [])],
            options => options.WithStrictOrdering().ComparingByMembers<ChangeSettings>());
        settings.Outbreaks.Should().Equal(new OutbreakSettings("North", new(2026, 1, 6), new(2026, 1, 19), "night shift"), new OutbreakSettings("South", new(2026, 3, 1), null, ""));
        settings.Community!.Measure.Should().Be(CommunityMeasure.Positivity);
        settings.Community.Source.Should().Be("bulletin");
        settings.Community.Until.Should().Be(new DateOnly(2026, 3, 1));
        settings.Community.Values.Should().Equal(new CommunityValue(new(2025, 12, 29), 0.012, 0.01, 0.02), new CommunityValue(new(2026, 1, 5), 0.02, null, null));
    }

    [Fact]
    public void An_empty_object_gives_the_defaults_of_the_design()
    {
        var settings = ProgramFile.Parse("\uFEFF{}");

        settings.Policy.ConfirmWithinHours.Should().Be(72);
        settings.Policy.ConfirmBeforeHours.Should().Be(2);
        settings.Policy.AuditWithinHours.Should().Be(24);
        settings.Policy.ReportLagHours.Should().Be(48);
        settings.Policy.EpisodeDays.Should().Be(90);
        settings.Policy.IsolationDays.Should().BeNull();
        settings.Policy.FollowUp.Should().Equal(Outcome.Positive, Outcome.Inconclusive);
        settings.Report.Should().Be(new ReportSettings { Confidence = 0.95, Period = ReportPeriod.Week, SuppressBelow = 0 });
        settings.Screens.Should().BeEmpty();
        settings.Changes.Should().BeEmpty();
        settings.Outbreaks.Should().BeEmpty();
        settings.Community.Should().BeNull();
        settings.Report.CompareBy.Should().Be(CompareBy.Site);
    }

    [Fact]
    public void A_bare_date_means_the_end_of_that_day() =>
        ProgramFile.Parse("""{ "dataAsOf": "2026-03-31" }""").DataAsOf
            .Should().Be(new StatedMoment(new DateTime(2026, 3, 31, 23, 59, 59), null));

    [Theory]
    [InlineData("""{ "polcy": {} }""", "polcy", "\"policy\"")]
    [InlineData("""{ "Title": "x" }""", "Title", "\"title\"")]
    [InlineData("""{ "policy": { "confirmWithin": 72 } }""", "policy.confirmWithin", "\"confirmWithinHours\"")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitvity": 0.9 } ] }""", "screens[0].sensitvity", "\"sensitivity\"")]
    [InlineData("""{ "exports": { "screening": { "columns": { "collectedat": "when" } } } }""", "exports.screening.columns.collectedat", "\"collected_at\"")]
    [InlineData("""{ "audits": { "strata": [ { "name": "a", "sites": ["N"], "negativs": 5 } ] } }""", "audits.strata[0].negativs", "\"negatives\"")]
    [InlineData("""{ "exports": { "confirmation": {} } }""", "exports.confirmation", "\"confirmatory\"")]
    [InlineData("""{ "changes": [ { "on": "2026-01-13", "what": "a", "site": ["A"] } ] }""", "changes[0].site", "\"sites\"")]
    [InlineData("""{ "outbreaks": [ { "site": "A", "from": "2026-01-13", "until": "2026-01-14" } ] }""", "outbreaks[0].until", "\"site\"")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "value": 5, "values": [ { "from": "2026-01-13", "value": 0 } ] } }""", "community.value", "\"values\"")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "from": "2026-01-13", "valu": 0, "value": 0 } ] } }""", "community.values[0].valu", "\"value\"")]
    [InlineData("""{ "report": { "compare": "site" } }""", "report.compare", "\"compareBy\"")]
    public void An_unknown_key_names_its_path_and_the_nearest_known_one(string text, string path, string nearest)
    {
        var found = Problems(text).Should().ContainSingle().Subject;

        found.Code.Should().Be(ProgramFile.UnknownKeyCode);
        found.Line.Should().Be(1);
        found.Message.Should().StartWith(path + ":").And.Contain(nearest);
    }

    [Theory]
    [InlineData("[]", "braces")]
    [InlineData("""{ "title": 5 }""", "title must be a text")]
    [InlineData("""{ "title": " " }""", "title must be a text")]
    [InlineData("""{ "timeZone": "Europe/Nowhere" }""", "timeZone must be the IANA name")]
    [InlineData("""{ "dataAsOf": "31.03.2026" }""", "dataAsOf must be an ISO 8601")]
    [InlineData("""{ "screens": {} }""", "screens must be a list")]
    [InlineData("""{ "screens": [ 5 ] }""", "screens[0] must be an object")]
    [InlineData("""{ "screens": [ {} ] }""", "screens[0] must be given with a \"name\"")]
    [InlineData("""{ "screens": [ { "name": "a" }, { "name": "a" } ] }""", "screens[1].name must be different")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": "97/61" } ] }""", "no more successes than trials")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": "0/0" } ] }""", "at least one trial")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": "0,93" } ] }""", "0.93")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": "93%" } ] }""", "0.93")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": 93 } ] }""", "for 93 percent write 0.93")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": -0.1 } ] }""", "a fraction from 0 to 1")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": { "value": 0.7 } } ] }""", "\"lower\" and \"upper\"")]
    [InlineData("""{ "screens": [ { "name": "a", "sensitivity": { "value": 0.7, "lower": 0.8, "upper": 0.9 } } ] }""", "in order")]
    [InlineData("""{ "screens": [ { "name": "a", "readWindowMinutes": [20, 10] } ] }""", "the earlier first")]
    [InlineData("""{ "screens": [ { "name": "a", "readWindowMinutes": 15 } ] }""", "two whole numbers")]
    [InlineData("""{ "screens": [ { "name": "a", "runsPerKit": 0 } ] }""", "at least 1")]
    [InlineData("""{ "screens": [ { "name": "a", "runsPerKit": 2.5 } ] }""", "whole number")]
    [InlineData("""{ "audits": [] }""", "audits must be an object")]
    [InlineData("""{ "audits": { "strata": 5 } }""", "audits.strata must be a list")]
    [InlineData("""{ "audits": { "strata": [ 5 ] } }""", "audits.strata[0] must be an object")]
    [InlineData("""{ "audits": { "strata": [ { "sites": ["A*"] } ] } }""", "with a \"name\"")]
    [InlineData("""{ "audits": { "strata": [ { "name": "a", "negatives": 5 }, { "name": "a", "negatives": 5 } ] } }""", "audits.strata[1].name must be different")]
    [InlineData("""{ "audits": { "strata": [ { "name": "a" } ] } }""", "by which its negative runs are counted")]
    [InlineData("""{ "audits": { "strata": [ { "name": "a", "negatives": 5, "lots": ["A*"] } ] } }""", "not with both")]
    [InlineData("""{ "audits": { "strata": [ { "name": "a", "negatives": 0 } ] } }""", "at least 1")]
    [InlineData("""{ "audits": { "strata": [ { "name": "a", "collection": "home" } ] } }""", "\"supervised\", \"self\"")]
    [InlineData("""{ "prevalence": 0.004 }""", "\"value\": 0.004")]
    [InlineData("""{ "prevalence": { "source": "x" } }""", "given with a \"value\"")]
    [InlineData("""{ "prevalence": { "value": 0.1, "lower": 0 } }""", "with neither")]
    [InlineData("""{ "prevalence": { "value": 1.2 } }""", "prevalence.value must be a fraction")]
    [InlineData("""{ "policy": { "confirmWithinHours": "72" } }""", "number of hours")]
    [InlineData("""{ "policy": { "confirmWithinHours": 1e400 } }""", "number of hours")]
    [InlineData("""{ "policy": { "episodeDays": 0 } }""", "whole number of days")]
    [InlineData("""{ "policy": { "followUp": [] } }""", "\"positive\", \"inconclusive\" or both")]
    [InlineData("""{ "policy": { "followUp": ["negative"] } }""", "policy.followUp[0] must be one of")]
    [InlineData("""{ "policy": { "controlsRequired": ["hourly"] } }""", "\"new-lot\", \"new-operator\", \"new-site\", \"daily\"")]
    [InlineData("""{ "alarms": { "falseAlarmChance": 0 } }""", "between 0 and 1, such as 0.01")]
    [InlineData("""{ "alarms": { "falseAlarmChance": 5 } }""", "for 5 percent write 0.05")]
    [InlineData("""{ "alarms": { "falseAlarmEveryDays": 0 } }""", "whole number of days")]
    [InlineData("""{ "alarms": { "baselineDays": 1.5 } }""", "whole number of days")]
    [InlineData("""{ "alarms": { "acknowledged": {} } }""", "a list of alarms in brackets")]
    [InlineData("""{ "alarms": { "acknowledged": [ { "rule": "lot-evidence" } ] } }""", "the \"rule\" and the \"level\"")]
    [InlineData("""{ "alarms": { "acknowledged": [ { "rule": "lot-faulty", "level": "A" } ] } }""", "\"lot-evidence\"")]
    [InlineData("""{ "alarms": { "acknowledged": [ { "rule": "lot-evidence", "level": "A", "until": "31.1.2026" } ] } }""", "an ISO 8601 date")]
    [InlineData("""{ "report": { "period": "year" } }""", "\"day\", \"week\", \"month\"")]
    [InlineData("""{ "report": { "confidence": 1 } }""", "between 0 and 1")]
    [InlineData("""{ "report": { "confidence": 95 } }""", "for 95 percent write 0.95")]
    [InlineData("""{ "report": { "controlLimits": "sigma" } }""", "\"exact\", \"three-sigma\"")]
    [InlineData("""{ "report": { "suppressBelow": -1 } }""", "whole number")]
    [InlineData("""{ "exports": { "screening": { "files": "a.csv" } } }""", "in brackets")]
    [InlineData("""{ "exports": { "screening": { "words": { "x": "positiv" } } } }""", "\"positive\"")]
    [InlineData("""{ "exports": { "headcount": { "words": { "x": "positive" } } } }""", "has no words")]
    [InlineData("""{ "costs": 5 }""", "costs must be an object")]
    [InlineData("""{ "report": { "compareBy": "shift" } }""", "\"site\", \"operator\", \"kit\", \"specimen\", \"region\"")]
    [InlineData("""{ "changes": { "on": "2026-01-13" } }""", "changes must be a list")]
    [InlineData("""{ "changes": [ "2026-01-13" ] }""", "changes[0] must be an object")]
    [InlineData("""{ "changes": [ { "what": "a" } ] }""", "\"on\", the first day")]
    [InlineData("""{ "changes": [ { "on": "2026-01-13" } ] }""", "\"what\", what changed")]
    [InlineData("""{ "changes": [ { "on": "13.1.2026", "what": "a" } ] }""", "changes[0].on must be an ISO 8601 date")]
    [InlineData("""{ "changes": [ { "on": "2026-01-13", "what": "a", "sites": "A*" } ] }""", "a list of site patterns")]
    [InlineData("""{ "changes": [ { "on": "2026-01-13", "what": "a", "sites": [] } ] }""", "at least one site pattern")]
    [InlineData("""{ "changes": [ { "on": "2026-01-13", "what": "a" }, { "on": "2026-01-13", "what": "a", "sites": ["A"] } ] }""", "changes[1] must be different")]
    [InlineData("""{ "outbreaks": {} }""", "outbreaks must be a list")]
    [InlineData("""{ "outbreaks": [ { "site": "A" } ] }""", "\"from\", its first day")]
    [InlineData("""{ "outbreaks": [ { "from": "2026-01-13" } ] }""", "given with the \"site\"")]
    [InlineData("""{ "outbreaks": [ { "site": "A", "from": "2026-01-13", "to": "2026-01-12" } ] }""", "not before \"from\"")]
    [InlineData("""{ "outbreaks": [ { "site": "A", "from": "2026-02-30" } ] }""", "an ISO 8601 date")]
    [InlineData("""{ "community": 0.012 }""", "community must be an object")]
    [InlineData("""{ "community": {} }""", "the \"measure\", the \"source\" and the \"values\"")]
    [InlineData("""{ "community": { "measure": "incidence", "source": "a", "values": [ { "from": "2026-01-13", "value": 0 } ] } }""", "\"positivity\", \"cases-per-100000-per-week\"")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [] } }""", "a list of values")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "value": 0 } ] } }""", "\"from\", its first day")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "from": "2026-01-13" } ] } }""", "given with a \"value\"")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "from": "2026-01-13", "value": 1.2 } ] } }""", "for 1.2 percent write 0.012")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "from": "2026-01-13", "value": 0.1, "lower": 0.2, "upper": 0.3 } ] } }""", "in order")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "values": [ { "from": "2026-01-13", "value": 0.1 }, { "from": "2026-01-13", "value": 0.1 } ] } }""", "values[1].from must be later")]
    [InlineData("""{ "community": { "measure": "positivity", "source": "a", "until": "2026-01-12", "values": [ { "from": "2026-01-13", "value": 0.1 } ] } }""", "not before the last value's \"from\"")]
    [InlineData("""{ "community": { "measure": "cases-per-100000-per-week", "source": "a", "values": [ { "from": "2026-01-13", "value": 1e6 } ] } }""", "cases in 100,000 people in a week")]
    public void A_wrong_value_says_what_is_wanted(string text, string wanted)
    {
        var found = Problems(text).Should().ContainSingle().Subject;

        found.Code.Should().Be(ProgramFile.WrongValueCode);
        found.Message.Should().Contain(wanted);
    }

    [Fact]
    public void Every_problem_is_reported_in_line_order()
    {
        var found = Problems("{\n \"report\": { \"confidnce\": 0.95 },\n \"title\": 5,\n \"title\": \"x\",\n \"policy\": { \"episodeDays\": -1 }\n}");

        found.Select(problem => (problem.Code, problem.Line)).Should().Equal(
            (ProgramFile.UnknownKeyCode, 2L),
            (ProgramFile.WrongValueCode, 3L),
            (ProgramFile.RepeatedKeyCode, 4L),
            (ProgramFile.WrongValueCode, 5L));
        found.Should().OnlyContain(problem => problem.Severity == Severity.Error && problem.File == "program.json");
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("{\n\n  \"title\": \"a\"\n  \"timeZone\": \"b\" }", 4)]
    [InlineData("{ \"title\": \"\\ud800\" }", 1)]
    [InlineData("{} {}", 1)]
    [InlineData("{ \"title\": ", 1)]
    public void A_text_that_is_not_JSON_names_the_line(string text, long line)
    {
        var found = Problems(text).Should().ContainSingle().Subject;

        found.Code.Should().Be(ProgramFile.NotJsonCode);
        found.Line.Should().Be(line);
    }

    [Fact]
    public void Arbitrary_text_never_fails_in_another_way() =>
        CsCheck.Check.Sample(CsCheck.Gen.String, text =>
        {
            try
            {
                ProgramFile.Parse(text);
            }
            catch (UnusableDataException failure)
            {
                failure.Diagnostics.Should().NotBeEmpty();
            }
        });

    private static System.Collections.Immutable.ImmutableArray<Diagnostic> Problems(string text) =>
        FluentActions.Invoking(() => ProgramFile.Parse(text)).Should().Throw<UnusableDataException>().Which.Diagnostics;
}
