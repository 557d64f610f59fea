using System.Collections.Immutable;
using System.Text.Json.Nodes;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files;

/// <summary>
/// The files of <c>tables/</c> described for other programs by the open standard Data Package, version 2: each table's fields with type,
/// unit and meaning, what stands for a missing value, and its key. Under which licence they are published is for the program to say.
/// </summary>
internal static class DataPackage
{
    /// <summary>Name of the file, beside the tables.</summary>
    public const string FileName = "datapackage.json";

    /// <summary>The profile that the description follows; a name, not fetched.</summary>
    public const string Profile = "https://datapackage.org/profiles/2.0/datapackage.json";

    /// <summary>What the word for a hidden cell is in the tables.</summary>
    private const string Hidden = "hidden";

    /// <summary>The description.</summary>
    /// <param name="title">Title of the program.</param>
    /// <param name="tables">The tables.</param>
    public static string Of(string title, ImmutableArray<ITable> tables)
    {
        var package = new JsonObject
        {
            ["$schema"] = Profile,
            ["name"] = "screening-evaluation-tables",
            ["title"] = title,
            ["description"] = "The tables of an evaluation of workplace screening. Proportions are fractions from 0 to 1, differences of them from -1 to 1. An empty cell has no value: "
                + "nothing applies there, as for the level of a whole program, or the figure is not defined, and then findings.json says why. A cell reads \"hidden\" where its value is not shown to protect people. "
                + "A text that a spreadsheet would take for a formula is preceded by an apostrophe.",
            ["resources"] = new JsonArray([.. tables.Select(Resource), Descriptions()]),
        };
        return package.ToJsonString(JsonText.Layout) + "\n";
    }

    private static JsonObject Resource(ITable table) =>
        Resource(table.Id, table.Title, table.Meaning, table.Columns.Select((column, index) => Field(column.Name, column.Heading, TypeOf(column.Unit), Described(table, index))), TableKeys.Of(table.Id));

    private static JsonObject Descriptions() =>
        Resource("columns", "Columns", "What stands in every column of every table.", ColumnDescriptions.Fields.Select(field => Field(field.Name, field.Heading, "string", field.Meaning)), new TableKey(["table", "column"], MayBeEmpty: false));

    private static JsonObject Resource(string id, string title, string meaning, IEnumerable<JsonNode> fields, TableKey? key)
    {
        var schema = new JsonObject { ["fields"] = new JsonArray([.. fields]), ["missingValues"] = new JsonArray("", Hidden) };
        var names = new JsonArray([.. (key?.Columns ?? []).Select(name => JsonValue.Create(name))]);
        // A primary key has no missing value: where a part of it may be empty, it is only unique.
        if (key is { MayBeEmpty: false }) schema["primaryKey"] = names;
        else if (key is not null) schema["uniqueKeys"] = new JsonArray(names);
        return new JsonObject
        {
            ["name"] = id,
            ["type"] = "table",
            ["title"] = title,
            ["description"] = meaning,
            ["path"] = id + ".csv",
            ["format"] = "csv",
            ["mediatype"] = "text/csv",
            ["encoding"] = "utf-8",
            ["dialect"] = new JsonObject { ["delimiter"] = ",", ["lineTerminator"] = "\n", ["quoteChar"] = "\"", ["doubleQuote"] = true, ["header"] = true },
            ["schema"] = schema,
        };
    }

    private static JsonObject Field(string name, string heading, string type, string description) => new()
    {
        ["name"] = name, ["title"] = heading, ["type"] = type, ["description"] = description,
    };

    /// <summary>The type of a column by the standard's names.</summary>
    public static string TypeOf(Unit unit) => unit switch
    {
        Unit.Text => "string",
        Unit.Count => "integer",
        Unit.Date => "date",
        _ => "number",
    };

    private static string Described(ITable table, int column)
    {
        var info = table.Columns[column];
        var text = info.Unit is Unit.Text or Unit.Date ? info.Meaning : $"{info.Meaning} Unit: {ColumnDescriptions.Words(info.Unit)}.";
        if (info.Method is { } method) return $"{text} Method: {(MethodCatalogue.Find(method)?.Title is { } title ? $"{title} ({method})" : method)}.";
        return TableMethods.NamedBy(table, column) is >= 0 and var named ? $"{text} Method: see {table.Columns[named].Name}." : text;
    }
}
