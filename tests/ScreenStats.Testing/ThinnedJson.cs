using System.Text.Json;
using System.Text.Json.Nodes;

namespace ScreenStats.Testing;

/// <summary>A JSON document whose long lists are thinned: what holds for each of a list's members is asked of some, by a validator that takes a minute for all.</summary>
public static class ThinnedJson
{
    private const int Most = 60;

    /// <summary>The document, of each list longer than 60 about 60 members evenly spaced, the first and the last among them.</summary>
    public static JsonElement Of(string json) => JsonSerializer.SerializeToElement(Thin(JsonNode.Parse(json)));

    private static JsonNode? Thin(JsonNode? node) => node switch
    {
        JsonObject members => new JsonObject(members.Select(member => KeyValuePair.Create(member.Key, Thin(member.Value)))),
        JsonArray { Count: > Most } list => new JsonArray([.. Enumerable.Range(0, Most).Select(i => Thin(list[(int)((long)i * (list.Count - 1) / (Most - 1))]))]),
        JsonArray list => new JsonArray([.. list.Select(Thin)]),
        _ => node?.DeepClone(),
    };
}
