using System.Text;
using System.Text.Json;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Tests;

/// <summary>Follows addresses of figures into findings.json, as <see cref="FigurePath"/> describes them.</summary>
internal static class JsonPaths
{
    /// <summary>What stands at a path, and the reason beside it where it is undefined.</summary>
    public static (JsonElement Found, string? Undefined) Find(JsonElement root, string path)
    {
        var at = root;
        string? undefined = null;
        foreach (var (name, isKey) in Segments(path))
        {
            undefined = null;
            if (isKey)
            {
                var rows = at.EnumerateArray().Where(row => (row.ValueKind == JsonValueKind.Object ? First(row) : row.GetString()) == name).ToArray();
                rows.Should().NotBeEmpty($"{path} needs a row {name}");
                at = rows[0];
                continue;
            }

            if (at.TryGetProperty(name + "Undefined", out var reason)) undefined = reason.GetString();
            // One reason may stand for several figures of a record: limits have that of their estimate.
            undefined ??= at.EnumerateObject().Where(property => property.Name.EndsWith("Undefined", StringComparison.Ordinal)).Select(property => property.Value.GetString()).FirstOrDefault();
            at.TryGetProperty(name, out var next).Should().BeTrue($"{path} needs {name}");
            at = next;
        }

        return (at, undefined);
    }

    private static string First(JsonElement row)
    {
        var value = row.EnumerateObject().First().Value;
        return value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText();
    }

    private static IEnumerable<(string Name, bool IsKey)> Segments(string path)
    {
        var text = new StringBuilder();
        for (var at = 0; at < path.Length; at++)
        {
            if (path[at] is '.' or '[' && text.Length > 0)
            {
                yield return (text.ToString(), false);
                text.Clear();
            }

            if (path[at] == '[')
            {
                for (at++; path[at] != ']'; at++)
                {
                    if (path[at] == '\\') at++;
                    text.Append(path[at]);
                }

                yield return (text.ToString(), true);
                text.Clear();
            }
            else if (path[at] != '.')
            {
                text.Append(path[at]);
            }
        }

        if (text.Length > 0) yield return (text.ToString(), false);
    }
}
