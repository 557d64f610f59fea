using System.Text.Json;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Reading;
using ScreenStats.Counting.Programs.Reading.Cadence;
using ScreenStats.Counting.Programs.Reading.Costs;
using ScreenStats.Testing;

namespace ScreenStats.Counting.Tests.Programs;

public sealed class ProgramSchemaTests
{
    private static readonly JsonElement Schema = JsonDocument.Parse(ProgramFile.ReadSchema()).RootElement;

    [Fact]
    public void Schema_keys_and_accepted_keys_agree()
    {
        Keys().Should().BeEquivalentTo(ProgramKeys.Program);
        Keys("exports").Should().BeEquivalentTo(ProgramKeys.Exports);
        foreach (var (export, columns, words) in new[]
        {
            ("screening", ProgramKeys.ScreeningColumns, ProgramKeys.ScreeningWords),
            ("confirmatory", ProgramKeys.ConfirmatoryColumns, ProgramKeys.ConfirmatoryWords),
            ("controls", ProgramKeys.ControlsColumns, ProgramKeys.ControlsWords),
            ("headcount", ProgramKeys.HeadcountColumns, []),
            ("sites", ProgramKeys.SitesColumns, []),
        })
        {
            Keys("exports", export).Should().BeEquivalentTo(ProgramKeys.Export);
            Keys("exports", export, "columns").Should().BeEquivalentTo(columns);
            Words(At("exports", export, "dateOrder")).Should().Equal(ProgramKeys.DateOrders);
            var meanings = At("exports", export, "words").GetProperty("additionalProperties");
            if (words.IsEmpty) meanings.ValueKind.Should().Be(JsonValueKind.False);
            else Words(meanings).Should().Equal(words);
        }

        KeysOf(At("screens").GetProperty("items")).Should().BeEquivalentTo(ProgramKeys.Screen);
        Keys("confirmatoryTest").Should().BeEquivalentTo(ProgramKeys.ConfirmatoryTest);
        Keys("prevalence").Should().BeEquivalentTo(ProgramKeys.Prevalence);
        Keys("policy").Should().BeEquivalentTo(ProgramKeys.Policy);
        Words(At("policy", "followUp").GetProperty("items")).Should().Equal(ProgramKeys.FollowUp);
        Keys("warehouse").Should().BeEquivalentTo(ProgramKeys.Warehouse);
        Keys("audits").Should().BeEquivalentTo(ProgramKeys.Audits);
        KeysOf(At("audits", "strata").GetProperty("items")).Should().BeEquivalentTo(ProgramKeys.Stratum);
        Words(At("audits", "strata").GetProperty("items").GetProperty("properties").GetProperty("collection")).Should().Equal(ProgramKeys.Collections);
        Words(At("policy", "controlsRequired").GetProperty("items")).Should().Equal(ProgramKeys.ControlTriggers);
        Keys("alarms").Should().BeEquivalentTo(ProgramKeys.Alarms);
        KeysOf(At("alarms", "acknowledged").GetProperty("items")).Should().BeEquivalentTo(ProgramKeys.Acknowledged);
        Words(At("alarms", "acknowledged").GetProperty("items").GetProperty("properties").GetProperty("rule")).Should().Equal(ProgramKeys.AlarmRules);
        Keys("report").Should().BeEquivalentTo(ProgramKeys.Report);
        Words(At("report", "period")).Should().Equal(ProgramKeys.Periods);
        Words(At("report", "compareBy")).Should().Equal(ProgramKeys.CompareBy);
        KeysOf(At("changes").GetProperty("items")).Should().BeEquivalentTo(ProgramKeys.Change);
        KeysOf(At("outbreaks").GetProperty("items")).Should().BeEquivalentTo(ProgramKeys.Outbreak);
        Keys("community").Should().BeEquivalentTo(ProgramKeys.Community);
        Words(At("community", "measure")).Should().Equal(ProgramKeys.CommunityMeasures);
        KeysOf(At("community", "values").GetProperty("items")).Should().BeEquivalentTo(ProgramKeys.CommunityValue);
        KeysOf(Schema.GetProperty("$defs").GetProperty("accuracy").GetProperty("oneOf")[2]).Should().BeEquivalentTo(ProgramKeys.Accuracy);
    }

    [Fact]
    public void Schema_keys_and_accepted_keys_of_the_cadence_agree()
    {
        Keys("cadence").Should().BeEquivalentTo(CadenceKeys.Cadence);
        Keys("cadence", "course").Should().BeEquivalentTo(CadenceKeys.Course);
        Keys("cadence", "course", "detectable").Should().BeEquivalentTo(CadenceKeys.Window);
        Keys("cadence", "course", "infectious").Should().BeEquivalentTo(CadenceKeys.Window);
        Keys("cadence", "course", "symptoms").Should().BeEquivalentTo(CadenceKeys.Symptoms);
        Words(At("cadence", "course", "kind")).Should().Equal(CadenceKeys.CourseKinds);
        Words(At("cadence", "course", "infectiousness")).Should().Equal(CadenceKeys.Infectiousness);
        Words(At("cadence", "isolateOn")).Should().Equal(CadenceKeys.IsolateOn);
        KeysOf(At("cadence", "plannedAt").GetProperty("items")).Should().BeEquivalentTo(CadenceKeys.SitePlan);
        var definitions = Schema.GetProperty("$defs");
        var option = definitions.GetProperty("cadenceOption").GetProperty("oneOf")[2];
        KeysOf(option).Should().BeEquivalentTo(CadenceKeys.Option);
        Words(option.GetProperty("properties").GetProperty("weekdays").GetProperty("items")).Should().Equal(CadenceKeys.Weekdays);
        foreach (var range in (string[])["shareRange", "daysRange", "delayRange"])
            KeysOf(definitions.GetProperty(range).GetProperty("oneOf")[1]).Should().BeEquivalentTo(CadenceKeys.Range);
        foreach (var range in (string[])["repeatedMisses", "reproduction", "dispersion", "immunityDays"])
            KeysOf(At("cadence", range).GetProperty("oneOf")[1]).Should().BeEquivalentTo(CadenceKeys.Range);
    }

    [Fact]
    public void Schema_keys_and_accepted_keys_of_the_costs_agree()
    {
        Keys("costs").Should().BeEquivalentTo(CostKeys.Costs);
        Keys("costs", "pooling").Should().BeEquivalentTo(CostKeys.Pooling);
        Keys("costs", "report").Should().BeEquivalentTo(CostKeys.Report);
        KeysOf(At("costs", "rules").GetProperty("items")).Should().BeEquivalentTo(CostKeys.Rule);
        KeysOf(At("costs", "operatorMinutes").GetProperty("oneOf")[1]).Should().BeEquivalentTo(CadenceKeys.Range);
        KeysOf(Schema.GetProperty("$defs").GetProperty("moneyRange").GetProperty("oneOf")[1]).Should().BeEquivalentTo(CadenceKeys.Range);
        At("costs").GetRawText().Should().NotContain("\"default\"", "no price has a default");
    }

    [Fact]
    public void Schema_defaults_are_the_defaults_of_the_settings()
    {
        var policy = new PolicySettings();
        Default("policy", "confirmWithinHours").GetDouble().Should().Be(policy.ConfirmWithinHours);
        Default("policy", "confirmBeforeHours").GetDouble().Should().Be(policy.ConfirmBeforeHours);
        Default("policy", "auditWithinHours").GetDouble().Should().Be(policy.AuditWithinHours);
        Default("policy", "reportLagHours").GetDouble().Should().Be(policy.ReportLagHours);
        Default("policy", "episodeDays").GetInt32().Should().Be(policy.EpisodeDays);
        var alarms = new AlarmSettings();
        Default("alarms", "falseAlarmChance").GetDouble().Should().Be(alarms.FalseAlarmChance);
        Default("alarms", "falseAlarmEveryDays").GetInt32().Should().Be(alarms.FalseAlarmEveryDays);
        Default("alarms", "invalidRateLimit").GetDouble().Should().Be(alarms.InvalidRateLimit);
        Default("alarms", "baselineDays").GetInt32().Should().Be(alarms.BaselineDays);
        Default("report", "confidence").GetDouble().Should().Be(new ReportSettings().Confidence);
        Default("report", "period").GetString().Should().Be("week");
        Default("report", "suppressBelow").GetInt32().Should().Be(0);
        Default("report", "controlLimits").GetString().Should().Be("exact");
        Default("report", "compareBy").GetString().Should().Be("site");
        Default("warehouse", "timeoutSeconds").GetInt32().Should().Be(new WarehouseSettings().TimeoutSeconds);
        var cadence = new CadenceSettings();
        Default("cadence", "options").EnumerateArray().Select(word => word.GetString()).Should().Equal(cadence.Options.Select(option => option.Name));
        Default("cadence", "days").GetInt32().Should().Be(cadence.Days);
        Default("cadence", "draws").GetInt32().Should().Be(cadence.Draws);
        Default("cadence", "seed").GetUInt64().Should().Be(cadence.Seed);
        Default("cadence", "isolateOn").GetString().Should().Be(CadenceKeys.IsolateOn[(int)cadence.IsolateOn]);
    }

    [Fact]
    public void Schema_shipped_in_the_assembly_is_the_file_in_the_source() =>
        ProgramFile.ReadSchema().Should().Be(File.ReadAllText(
            RepositoryRoot.Combine("src", "ScreenStats.Counting", "Programs", "program.schema.json")));

    private static JsonElement At(params string[] path) =>
        path.Aggregate(Schema, (item, name) => item.GetProperty("properties").GetProperty(name));

    private static JsonElement Default(params string[] path) => At(path).GetProperty("default");

    private static string[] Keys(params string[] path) => KeysOf(At(path));

    private static string[] KeysOf(JsonElement item)
    {
        item.GetProperty("additionalProperties").ValueKind.Should().Be(JsonValueKind.False);
        return item.GetProperty("properties").EnumerateObject().Select(property => property.Name).ToArray();
    }

    private static string[] Words(JsonElement item) =>
        item.GetProperty("enum").EnumerateArray().Select(word => word.GetString()!).ToArray();
}
