using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Files.Schema;

namespace ScreenStats.Reporting.Tests.Schema;

/// <summary>
/// Makes the JSON Schema of findings.json from the records that are written into it, by the same options, with their XML comments: one
/// definition for each record and each set of words. What may be hidden is null where its <c>…Hidden</c> stands beside it, and nowhere else.
/// </summary>
internal sealed class SchemaMaker
{
    private const string Undefined = "Undefined";
    private readonly RecordComments comments = new(typeof(Findings).Assembly, typeof(Counting.Cubes.Tally).Assembly, typeof(Statistics.Estimate).Assembly);
    private readonly SortedDictionary<string, JsonObject?> definitions = new(StringComparer.Ordinal);
    private readonly Dictionary<Type, string> names = [];

    /// <summary>The text of the schema: a line for each member.</summary>
    public static string Text()
    {
        var text = new System.Text.StringBuilder();
        Print(text, new SchemaMaker().Schema(), 0);
        return text.Append('\n').ToString();
    }

    private JsonObject Schema()
    {
        var root = Record(typeof(Findings));
        var properties = new JsonObject
        {
            ["$schema"] = new JsonObject { ["const"] = FindingsFile.SchemaName, ["description"] = "This schema, which stands beside the file." },
            ["format"] = new JsonObject { ["const"] = FindingsFile.Format, ["description"] = "Version of the format. It rises when a member is removed or renamed or comes to mean something else." },
        };
        foreach (var (name, property) in root["properties"]!.AsObject().ToArray()) properties.Add(name, Taken(root["properties"]!.AsObject(), name, property));
        var disclosure = Value(typeof(ReleaseDisclosure), nullable: false);
        disclosure["description"] = "There only where small counts are hidden: what was hidden, and how well.";
        properties.Add("disclosure", disclosure);
        var required = new JsonArray("$schema", "format");
        foreach (var name in root["required"]!.AsArray()) required.Add(name!.GetValue<string>());
        return new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:screenstats:findings:{FindingsFile.Format}",
            ["title"] = "Findings of a screening program",
            ["description"] = "Numbers have full precision; proportions are fractions from 0 to 1. A figure that is not defined is null, with the reason beside it under its name "
                + "and \"Undefined\"; one that is hidden to protect people is null, and true stands beside it under its name and \"Hidden\". A figure is addressed by the names that lead "
                + "to it, joined by dots; a row of a list by the value of its first member in brackets, a word in a list of words by itself: lots[A-17].refuted. In report.html each figure of a sentence carries this address.",
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = required,
            ["additionalProperties"] = false,
            ["$defs"] = new JsonObject(definitions.Select(definition => KeyValuePair.Create(definition.Key, (JsonNode?)definition.Value))),
        };
    }

    private static JsonNode? Taken(JsonObject from, string name, JsonNode? node)
    {
        from.Remove(name);
        return node;
    }

    private JsonObject Record(Type type)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        var hidden = new List<string>();
        var shown = new JsonArray();
        foreach (var property in JsonText.Layout.GetTypeInfo(type).Properties.Where(property => property.Get is not null))
        {
            var value = Value(property.PropertyType, Nullable.GetUnderlyingType(property.PropertyType) is not null || !property.PropertyType.IsValueType && property.IsGetNullable);
            var own = property.AttributeProvider as PropertyInfo;
            if (own is not null && comments.Of(own) is { } meaning) value["description"] = meaning;
            if (property.Name.EndsWith(Undefined, StringComparison.Ordinal) && property.PropertyType == typeof(string))
            {
                // Left out where the figure is defined.
                value["type"] = "string";
                properties.Add(property.Name, value);
                continue;
            }

            if (own?.GetCustomAttribute<JsonIgnoreAttribute>()?.Condition == JsonIgnoreCondition.WhenWritingNull)
            {
                // Left out where there is nothing to say, so never null.
                properties.Add(property.Name, Value(property.PropertyType, nullable: false) is var there && value["description"] is { } said ? With(there, said.GetValue<string>()) : there);
                continue;
            }

            required.Add(property.Name);
            if (DisclosedJson.MayHide(property.Name, property.PropertyType))
            {
                hidden.Add(property.Name);
                if (Nullify(value)) shown.Add(Either(property.Name));
            }

            properties.Add(property.Name, value);
        }

        var record = new JsonObject();
        if (comments.Of(type) is { } summary) record["description"] = summary;
        record["type"] = "object";
        record["properties"] = properties;
        if (hidden.Count > 0) record["patternProperties"] = new JsonObject { [$"^({string.Join('|', hidden)})Hidden$"] = new JsonObject { ["const"] = true } };
        record["required"] = required;
        if (shown.Count > 0) record["allOf"] = shown;
        record["additionalProperties"] = false;
        return record;
    }

    private static JsonObject With(JsonObject value, string description)
    {
        value["description"] = description;
        return value;
    }

    /// <summary>Either there is a value, or it is hidden and said to be.</summary>
    private static JsonObject Either(string name) => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["properties"] = new JsonObject { [name] = new JsonObject { ["not"] = new JsonObject { ["type"] = "null" } } } },
            new JsonObject { ["required"] = new JsonArray(name + "Hidden") }),
    };

    private JsonObject Value(Type declared, bool nullable)
    {
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        var value = Plain(type) ?? Compound(type);
        if (nullable) Nullify(value);
        return value;
    }

    private static JsonObject? Plain(Type type) => Type.GetTypeCode(type) switch
    {
        _ when type.IsEnum => null,
        TypeCode.Boolean => new JsonObject { ["type"] = "boolean" },
        TypeCode.Int32 or TypeCode.Int64 or TypeCode.UInt64 => new JsonObject { ["type"] = "integer" },
        TypeCode.Double or TypeCode.Decimal => new JsonObject { ["type"] = "number" },
        TypeCode.String => new JsonObject { ["type"] = "string" },
        // The minute is left out where small counts are hidden.
        TypeCode.DateTime => new JsonObject { ["type"] = "string", ["pattern"] = @"^\d{4}-\d\d-\d\d(T\d\d:\d\d:\d\d)?$" },
        _ when type == typeof(TimeOnly) => new JsonObject { ["type"] = "string", ["pattern"] = @"^\d\d:\d\d:\d\d$" },
        _ when type == typeof(DateOnly) => new JsonObject { ["type"] = "string", ["format"] = "date" },
        _ => null,
    };

    private JsonObject Compound(Type type)
    {
        if (type.IsEnum) return Reference(type, () => Words(type));
        var info = JsonText.Layout.GetTypeInfo(type);
        return info.Kind switch
        {
            JsonTypeInfoKind.Enumerable => new JsonObject { ["type"] = "array", ["items"] = Value(info.ElementType!, nullable: Nullable.GetUnderlyingType(info.ElementType!) is not null) },
            JsonTypeInfoKind.Object => Reference(type, () => Record(type)),
            _ => throw new InvalidOperationException($"The schema does not know how {type} is written."),
        };
    }

    private JsonObject Words(Type type)
    {
        var words = new JsonArray();
        var values = type.IsDefined(typeof(FlagsAttribute)) ? Combinations(type) : Enum.GetValues(type).Cast<object>();
        foreach (var value in values)
        {
            var word = new JsonObject { ["const"] = JsonSerializer.SerializeToNode(value, type, JsonText.Layout) };
            if (type.GetField(value.ToString()!) is { } field && comments.Of(field) is { } meaning) word["description"] = meaning;
            words.Add(word);
        }

        var definition = new JsonObject();
        if (comments.Of(type) is { } summary) definition["description"] = summary;
        definition["oneOf"] = words;
        return definition;
    }

    private static IEnumerable<object> Combinations(Type type)
    {
        var all = Enum.GetValues(type).Cast<object>().Aggregate(0, (sum, value) => sum | (int)value);
        return Enumerable.Range(0, all + 1).Where(value => (value & ~all) == 0).Select(value => Enum.ToObject(type, value));
    }

    private JsonObject Reference(Type type, Func<JsonObject> make)
    {
        if (!names.TryGetValue(type, out var name))
        {
            name = JsonNamingPolicy.CamelCase.ConvertName(type.Name);
            if (type.IsGenericType) throw new InvalidOperationException($"The schema has no name for {type}.");
            if (definitions.ContainsKey(name)) name = $"{JsonNamingPolicy.CamelCase.ConvertName(type.Namespace!.Split('.')[^1])}{type.Name}";
            names.Add(type, name);
            definitions.Add(name, null);
            definitions[name] = make();
        }

        return new JsonObject { ["$ref"] = "#/$defs/" + name };
    }

    /// <summary>Lets a value be null too; whether it could not be before.</summary>
    private static bool Nullify(JsonObject value)
    {
        if (value["type"] is JsonArray || value.ContainsKey("anyOf")) return false;
        if (value["type"] is JsonValue only)
        {
            value["type"] = new JsonArray(only.GetValue<string>(), "null");
            return true;
        }

        var reference = value["$ref"]!.GetValue<string>();
        value.Remove("$ref");
        value["anyOf"] = new JsonArray(new JsonObject { ["$ref"] = reference }, new JsonObject { ["type"] = "null" });
        return true;
    }

    private static void Print(System.Text.StringBuilder text, JsonNode node, int depth)
    {
        const int Deepest = 4;
        if (depth >= Deepest || node is not (JsonObject { Count: > 0 } or JsonArray { Count: > 0 }))
        {
            text.Append(node.ToJsonString(OneLine));
            return;
        }

        ImmutableArray<(string? Name, JsonNode Node)> members = node is JsonObject record
            ? [.. record.Select(member => ((string?)member.Key, member.Value!))]
            : [.. node.AsArray().Select(item => ((string?)null, item!))];
        var inLine = members.All(member => member.Node is JsonValue) && node is JsonArray;
        text.Append(node is JsonObject ? '{' : '[');
        for (var index = 0; index < members.Length; index++)
        {
            text.Append(index > 0 ? "," : "").Append(inLine ? index > 0 ? " " : "" : "\n" + new string(' ', depth + 1));
            if (members[index].Name is { } name) text.Append(JsonSerializer.Serialize(name, OneLine)).Append(": ");
            Print(text, members[index].Node, depth + 1);
        }

        text.Append(inLine ? "" : "\n" + new string(' ', depth)).Append(node is JsonObject ? '}' : ']');
    }

    private static readonly JsonSerializerOptions OneLine = new()
    {
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
    };
}
