using System.Globalization;
using System.Text;
using System.Text.Json;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting.Files;

namespace ScreenStats.Reporting.Tests.Files;

/// <summary>
/// tables/datapackage.json against the tables that it describes, read by the rules of the standard (Data Package 2.0, datapackage.org: Data
/// Package, Data Resource, Table Dialect, Table Schema).
/// </summary>
public class DataPackageTests
{
    private static readonly (string Name, Findings Findings)[] Released =
    [
        .. Programs.All,
        ("small counts hidden", DisclosureControl.Apply(Programs.FaultyLot with { Settings = Programs.FaultyLot.Settings with { Report = Programs.FaultyLot.Settings.Report with { SuppressBelow = 5 } } })),
    ];

    [Fact]
    public void Every_table_is_a_resource_and_every_resource_a_table_with_the_same_columns()
    {
        foreach (var (name, findings) in Released)
        {
            using var package = Package(findings);
            var resources = package.RootElement.GetProperty("resources").EnumerateArray().ToList();
            resources.Select(resource => resource.GetProperty("path").GetString()).Should().Equal(findings.Tables.Select(table => table.Id + ".csv").Append("columns.csv"), name);
            foreach (var resource in resources) Names(resource).Should().Equal(Rows(findings, resource)[0], name);
        }
    }

    /// <summary>What the profile of a data package requires: of the package, of a resource, of a table schema and of a field.</summary>
    [Fact]
    public void The_members_that_the_standard_requires_are_there()
    {
        using var package = Package(Programs.FaultyLot);
        var root = package.RootElement;
        root.GetProperty("$schema").GetString().Should().Be("https://datapackage.org/profiles/2.0/datapackage.json");
        root.GetProperty("resources").GetArrayLength().Should().BePositive();
        root.TryGetProperty("licenses", out _).Should().BeFalse("the program says under which licence it publishes");
        root.TryGetProperty("created", out _).Should().BeFalse("no clock");
        var resources = root.GetProperty("resources").EnumerateArray().ToList();
        resources.Select(resource => resource.GetProperty("name").GetString()).Should().OnlyHaveUniqueItems().And.OnlyContain(name => System.Text.RegularExpressions.Regex.IsMatch(name!, "^[a-z0-9-]+$"));
        foreach (var resource in resources)
        {
            resource.GetProperty("type").GetString().Should().Be("table");
            resource.GetProperty("path").GetString().Should().NotStartWith("/").And.NotContain("..").And.NotContain(":");
            var schema = resource.GetProperty("schema");
            schema.GetProperty("missingValues").EnumerateArray().Select(value => value.GetString()).Should().Equal("", "hidden");
            Names(resource).Should().OnlyHaveUniqueItems();
            foreach (var field in schema.GetProperty("fields").EnumerateArray())
            {
                field.GetProperty("name").GetString().Should().NotBeNullOrEmpty();
                field.GetProperty("type").GetString().Should().BeOneOf("string", "integer", "number", "date");
                var description = field.GetProperty("description").GetString();
                description.Should().NotBeNullOrEmpty();
                if (field.GetProperty("type").GetString() is "integer" or "number") description.Should().Contain("Unit: ", "{0}.{1}", resource.GetProperty("name"), field.GetProperty("name"));
            }
        }
    }

    [Fact]
    public void Every_cell_of_every_column_is_missing_or_of_the_columns_type()
    {
        var seen = new HashSet<string>();
        foreach (var (name, findings) in Released)
        {
            using var package = Package(findings);
            foreach (var resource in package.RootElement.GetProperty("resources").EnumerateArray())
            {
                var types = resource.GetProperty("schema").GetProperty("fields").EnumerateArray().Select(field => field.GetProperty("type").GetString()!).ToArray();
                var names = Names(resource);
                foreach (var row in Rows(findings, resource).Skip(1))
                {
                    row.Should().HaveCount(types.Length);
                    for (var column = 0; column < types.Length; column++)
                    {
                        if (row[column] is "" or "hidden") continue;
                        seen.Add(types[column]);
                        if (!IsOf(types[column], row[column])) Assert.Fail($"{name}, {resource.GetProperty("path")}, {names[column]}: {row[column]} is no {types[column]}");
                    }
                }
            }
        }

        seen.Should().BeEquivalentTo(["string", "integer", "number", "date"]);
        IsOf("integer", "7.5").Should().BeFalse();
        IsOf("number", "1,5").Should().BeFalse();
        IsOf("number", "NaN").Should().BeFalse("none leaves the library, though the standard would allow it");
        IsOf("date", "2026-02-30").Should().BeFalse();
    }

    [Fact]
    public void Keys_tell_the_rows_of_a_table_apart_and_primary_ones_are_never_empty()
    {
        var (faults, keyed) = (new List<string>(), new HashSet<string>());
        foreach (var (name, findings) in Released)
        {
            using var package = Package(findings);
            foreach (var resource in package.RootElement.GetProperty("resources").EnumerateArray())
            {
                var schema = resource.GetProperty("schema");
                var primary = schema.TryGetProperty("primaryKey", out var key);
                if (!primary && !schema.TryGetProperty("uniqueKeys", out key)) continue;
                if (!primary) key = key[0];
                var path = resource.GetProperty("path").GetString()!;
                var columns = key.EnumerateArray().Select(column => Array.IndexOf(Names(resource), column.GetString())).ToArray();
                columns.Should().NotContain(-1, path);
                keyed.Add(path);
                var keys = Rows(findings, resource).Skip(1).Select(row => columns.Select(column => row[column]).ToArray()).ToArray();
                if (keys.Select(parts => string.Join('\u001F', parts)).Distinct().Count() < keys.Length) faults.Add($"{name}, {path}: two rows have one key");
                if (keys.Any(parts => parts.Any(part => part == "hidden" || primary && part == ""))) faults.Add($"{name}, {path}: a key is missing");
            }
        }

        faults.Should().BeEmpty();
        keyed.Should().BeEquivalentTo(TableKeys.Tables.Select(table => table + ".csv").Append("columns.csv"));
    }

    private static JsonDocument Package(Findings findings) => JsonDocument.Parse(DataPackage.Of("Harbour Works", findings.Tables));

    private static string[] Names(JsonElement resource) => [.. resource.GetProperty("schema").GetProperty("fields").EnumerateArray().Select(field => field.GetProperty("name").GetString()!)];

    /// <summary>The rows of a resource's file, headings first, read by RFC 4180.</summary>
    private static List<string[]> Rows(Findings findings, JsonElement resource)
    {
        var id = resource.GetProperty("name").GetString()!;
        var text = id == "columns" ? ColumnDescriptions.Csv(findings.Tables) : CsvText.Of(findings.Tables.Single(table => table.Id == id));
        var (rows, row, field) = (new List<string[]>(), new List<string>(), new StringBuilder());
        var quoted = false;
        for (var at = 0; at < text.Length; at++)
        {
            var letter = text[at];
            if (quoted && letter == '"' && at + 1 < text.Length && text[at + 1] == '"')
            {
                field.Append('"');
                at++;
            }
            else if (letter == '"')
            {
                quoted = !quoted;
            }
            else if (!quoted && letter is ',' or '\n')
            {
                row.Add(field.ToString());
                field.Clear();
                if (letter != '\n') continue;
                rows.Add([.. row]);
                row.Clear();
            }
            else
            {
                field.Append(letter);
            }
        }

        row.Should().BeEmpty("a file ends with a line end");
        return rows;
    }

    private static bool IsOf(string type, string text) => type switch
    {
        "integer" => System.Text.RegularExpressions.Regex.IsMatch(text, "^-?[0-9]+$"),
        "number" => System.Text.RegularExpressions.Regex.IsMatch(text, "^-?[0-9]+(\\.[0-9]+)?(E[+-]?[0-9]+)?$"),
        "date" => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _),
        _ => true,
    };
}
