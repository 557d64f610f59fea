using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Files.Schema;
using ScreenStats.Testing;

namespace ScreenStats.Reporting.Tests.Schema;

/// <summary>The schema of findings.json, held against the files by a validator that is not ours (JsonSchema.Net, draft 2020-12).</summary>
public class FindingsSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(FindingsFile.ReadSchema());
    private static readonly Findings Hiding = DisclosureControl.Apply(Programs.FaultyLot with { Settings = Programs.FaultyLot.Settings with { Report = Programs.FaultyLot.Settings.Report with { SuppressBelow = 5 } } });

    private static readonly string Sound = FindingsFile.Of(Programs.FaultyLot);

    [Fact]
    public void The_schema_shipped_is_the_one_that_the_records_make()
    {
        // Not a golden file, but kept as one: UPDATE_GOLDEN=1 makes it anew after a record has changed.
        Golden.Check(Path.Combine("..", "..", "src", "ScreenStats.Reporting", "Files", "Schema", FindingsFile.SchemaName), SchemaMaker.Text());
        FindingsFile.ReadSchema().Should().Be(SchemaMaker.Text());
    }

    [Fact]
    public void The_schema_is_a_schema_by_the_standard_and_says_what_nearly_everything_means()
    {
        var schema = JsonNode.Parse(FindingsFile.ReadSchema())!;
        MetaSchemas.Draft202012.Evaluate(JsonSerializer.SerializeToElement(schema)).IsValid.Should().BeTrue();
        schema["$schema"]!.GetValue<string>().Should().Be("https://json-schema.org/draft/2020-12/schema");
        var definitions = schema["$defs"]!.AsObject();
        var silent = definitions.Where(definition => definition.Value!["description"] is null).Select(definition => definition.Key)
            .Concat(definitions.SelectMany(definition => (definition.Value!["properties"]?.AsObject() ?? []).Where(property => property.Value!["description"] is null).Select(property => definition.Key + "." + property.Key)));
        silent.Should().BeEmpty();
    }

    [Fact]
    public void The_file_names_its_schema_and_its_format_first_and_the_schema_stands_beside_it()
    {
        foreach (var findings in new[] { Programs.FaultyLot, Hiding })
        {
            var files = Report.Files(findings, new ReportInputs());
            System.Text.Encoding.UTF8.GetString(files["findings.json"]).Should().StartWith("{\n \"$schema\": \"findings.schema.json\",\n \"format\": 1,\n \"span\": {");
            System.Text.Encoding.UTF8.GetString(files["findings.schema.json"]).Should().Be(FindingsFile.ReadSchema());
        }
    }

    [Fact]
    public void Every_programs_findings_are_as_the_schema_says()
    {
        foreach (var (name, findings) in Programs.All) Faults(ThinnedJson.Of(FindingsFile.Of(findings)).GetRawText()).Should().BeEmpty(name);
    }

    [Fact]
    public void Findings_that_hide_small_counts_are_as_the_schema_says()
    {
        var text = FindingsFile.Of(Hiding);
        text.Should().Contain("Hidden\": true");
        Faults(text).Should().BeEmpty();
    }

    [Theory]
    [InlineData("a member is missing", "lots.0", "refuted", null)]
    [InlineData("an analysis is missing", "", "ledger", null)]
    [InlineData("a member is unknown", "lots.0", "refutd", "1")]
    [InlineData("a count is a text", "lots.0", "runs", "\"7\"")]
    [InlineData("a count is not whole", "lots.0", "runs", "7.5")]
    [InlineData("a count is null and nothing says that it is hidden", "lots.0", "runs", "null")]
    [InlineData("a word is unknown", "lots.0", "flag", "\"odd\"")]
    [InlineData("something is hidden that never is", "lots.0", "lotHidden", "true")]
    [InlineData("something is said not to be hidden", "lots.0", "runsHidden", "false")]
    [InlineData("another format", "", "format", "2")]
    [InlineData("another schema", "", "$schema", "\"other.json\"")]
    [InlineData("a list is none", "", "lots", "{}")]
    [InlineData("a day is no day", "span", "firstDay", "\"January\"")]
    public void A_wrong_file_is_not(string why, string place, string member, string? value)
    {
        var root = JsonNode.Parse(Sound)!;
        var at = place.Split('.', StringSplitOptions.RemoveEmptyEntries).Aggregate(root, (node, step) => int.TryParse(step, out var index) ? node[index]! : node[step]!).AsObject();
        at.ContainsKey(member).Should().Be(why is not ("a member is unknown" or "something is hidden that never is" or "something is said not to be hidden"), member);
        if (value is null) at.Remove(member);
        else at[member] = JsonNode.Parse(value);
        IsSound(root.ToJsonString()).Should().BeFalse(why);
    }

    private static bool IsSound(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.Flag, RequireFormatValidation = true }).IsValid;
    }

    private static IEnumerable<string> Faults(string json)
    {
        using var document = JsonDocument.Parse(json);
        if (IsSound(json)) return [];
        var results = Schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        return results.Details!.Where(detail => detail.Errors is { Count: > 0 }).Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}").Take(10);
    }
}
